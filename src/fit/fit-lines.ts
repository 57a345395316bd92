import type { Arm, Junction, SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import type { Manner } from '../formats/dressing.js';
import { frameFinder } from '../geometry/guide-frame.js';
import type { Corner } from '../geometry/guide-line.js';
import { type Band, reachAt, shifted } from './band.js';
import type { SeamFit } from './fit.js';
import { fitSpan } from './fit-span.js';
import { leaveOutUnderThrough } from './leave-out.js';
import { limitedBand } from './reach.js';
import { reachOf, type Sized } from './sized.js';
import { type EndRules, type Span, spansOf } from './spans.js';
import { fromSeam, toSeam, type Walk, walkOutline, walkSeam } from './walk.js';

/** One stitch asked for along one line of the block. */
export interface LineAsk {
  readonly seam: number | 'outline';
  readonly sized: Sized;
  /** hand of the seam that one-sided stitches stand to */
  readonly side: 'left' | 'right';
  readonly reverse: boolean;
  readonly manner: Manner;
  /** through lines that this one stops short of, whatever its manner */
  readonly shortOf: ReadonlySet<number | 'outline'>;
  readonly passes: number;
  /** mm to the left of the seam, seen in the seam's own direction */
  readonly offset: number;
}

export interface FitRules {
  readonly gap: number;
  readonly outline: 'trim' | 'join' | 'free';
}

/** A line as fitted. */
export interface LineFit {
  readonly fit: SeamFit;
  /** lines whose treatment lies over this one's ends and must be sewn later */
  readonly tucksUnder: readonly (number | 'outline')[];
  readonly findings: readonly Finding[];
}

/** Corners sharper than this are broken: the treatment finishes there and starts anew. */
const BREAK_TURN = (120 * Math.PI) / 180;
/** A setback longer than this many reaches, or than this share of the line, narrows both treatments first. */
const LONG_SETBACK = 3;
const LONG_SHARE = 1 / 3;
const NARROWING = 0.85;
/** From 1 to a twentieth takes 19 steps of 0.85; no stitch shrinks further. */
const NARROWING_ROUNDS = 19;
/** Bands narrower than this share of what was asked for are worth a look. */
const NARROW_SHARE = 0.5;

/**
 * Fits every line that is asked for: bands first, then ends at junctions, then repeats. One ask a line, in any order;
 * answers come in the order of the asks. Cost: linear in the lines and their repeats.
 */
export function fitLines(map: SeamMap, asks: readonly LineAsk[], rules: FitRules): LineFit[] {
  const lines = narrowedLines(map, asks, rules);
  const fits = asks.map((ask) => fitLine(map, lines, lines.get(ask.seam)!, rules));
  return leaveOutUnderThrough(fits);
}

interface Line {
  readonly ask: LineAsk;
  readonly walk: Walk;
  readonly hand: 1 | -1;
  readonly band: Band;
  readonly scale: number;
}

type Lines = ReadonlyMap<number | 'outline', Line>;

function bandedLine(ask: LineAsk, walk: Walk, scale: number, gap: number): Line {
  const hand = (ask.side === 'left') === !walk.reverse ? 1 : -1;
  const unit = ask.sized.build(scale, ask.sized.repeat * scale);
  const reach = shifted(reachOf(unit, ask.sized.glide, hand), walk.reverse ? -ask.offset : ask.offset);
  return { ask, walk, hand, band: limitedBand(walk.guide, reach, gap), scale };
}

/** Lines with their bands; where an end would stay bare for long, the treatments that meet there made smaller. */
function narrowedLines(map: SeamMap, asks: readonly LineAsk[], rules: FitRules): Lines {
  const lines = new Map<number | 'outline', Line>();
  for (const ask of asks) {
    lines.set(ask.seam, bandedLine(ask, walkOf(map, ask), 1, rules.gap));
  }
  for (let round = 0; round < NARROWING_ROUNDS; round++) {
    const narrow = new Set<Line>();
    for (const line of lines.values()) {
      for (const partner of tooFarBack(map, lines, line, rules)) {
        if (partner.scale > partner.ask.sized.least + 1e-9) narrow.add(partner);
      }
    }
    if (narrow.size === 0) break;
    for (const line of narrow) {
      const scale = Math.max(line.ask.sized.least, line.scale * NARROWING);
      lines.set(line.ask.seam, bandedLine(line.ask, line.walk, scale, rules.gap));
    }
  }
  return lines;
}

function walkOf(map: SeamMap, ask: LineAsk): Walk {
  const at = (junction: number) => map.junctions[junction].at;
  if (ask.seam === 'outline') {
    const outline = map.outline!;
    return walkOutline(outline, ringStart(outline.corners, []));
  }
  const seam = map.seams[ask.seam - 1];
  const broken = seam.crossings.filter(({ junction }) => {
    const { through } = map.junctions[junction];
    return through !== null && through !== seam.id;
  });
  const start = seam.closed ? ringStart(seam.corners, broken) : 0;
  return walkSeam(seam, ask.reverse, start, at);
}

/** A ring is walked from where it is broken, else from a corner, so that no stretch runs across its start. */
function ringStart(corners: readonly Corner[], breaks: readonly { readonly u: number }[]): number {
  const sharp = corners.find((corner) => Math.abs(corner.turn) > BREAK_TURN);
  return breaks[0]?.u ?? sharp?.u ?? corners[0]?.u ?? 0;
}

function endRules(map: SeamMap, lines: Lines, line: Line, rules: FitRules): EndRules {
  const middle = reachAt(line.band, line.walk.guide.length / 2);
  return {
    map,
    reach: (arm) => armReach(lines, arm),
    manner: (through) => (through !== null && line.ask.shortOf.has(through) ? 'short' : line.ask.manner),
    gap: rules.gap,
    outline: rules.outline,
    dressed: (seam) => lines.has(seam),
    own: middle,
    guideOf: (seam) => lines.get(seam)?.walk.guide ?? null,
    breaksAt: (turn) => turn > BREAK_TURN || line.ask.sized.stitch.corner === 'break',
  };
}

/** Reach of the treatment on an arm, as seen walking away from the junction. */
function armReach(lines: Lines, arm: Arm): { left: number; right: number } {
  const line = lines.get(arm.seam);
  if (!line) return { left: 0, right: 0 };
  const reach = reachAt(line.band, fromSeam(line.walk, arm.u));
  return (arm.sense === 1) !== line.walk.reverse ? reach : { left: reach.right, right: reach.left };
}

/** The treatments to narrow because this line would have to end too far from a junction; none when all is well. */
function tooFarBack(map: SeamMap, lines: Lines, line: Line, rules: FitRules): Line[] {
  const found: Line[] = [];
  const length = line.walk.guide.length;
  for (const span of spansOf(line.walk, endRules(map, lines, line, rules))) {
    for (const end of [span.start, span.end]) {
      if (end.setback <= 0 || end.junction < 0) continue;
      const partners = partnersAt(map.junctions[end.junction], lines, line);
      const widest = Math.max(0, ...partners.map((partner) => Math.max(...reaches(partner))));
      const own = Math.max(...reaches(line));
      if (end.setback > LONG_SETBACK * (own + widest) || end.setback > LONG_SHARE * length) {
        found.push(line, ...partners);
      }
    }
  }
  return found;
}

function partnersAt(junction: Junction, lines: Lines, line: Line): Line[] {
  const seams = new Set(junction.arms.map((arm) => arm.seam));
  seams.delete(line.ask.seam);
  return [...seams].map((seam) => lines.get(seam)).filter((other) => other !== undefined);
}

function reaches(line: Line): [number, number] {
  const { left, right } = reachAt(line.band, line.walk.guide.length / 2);
  return [left, right];
}

function fitLine(map: SeamMap, lines: Lines, line: Line, rules: FitRules): LineFit {
  const { ask, walk } = line;
  const spans = spansOf(walk, endRules(map, lines, line, rules));
  const parts = spans.map((span) =>
    fitSpan({
      seam: ask.seam,
      guide: walk.guide,
      span,
      band: line.band,
      sized: ask.sized,
      scale: line.scale,
      hand: line.hand,
      passes: ask.passes,
      offset: walk.reverse ? -ask.offset : ask.offset,
      at: middleOf(walk, span),
    }),
  );
  const stretches = parts.flatMap((part) => part.stretches);
  const along = stretches.map((stretch) => {
    const [a, b] = [toSeam(walk, stretch.from), toSeam(walk, stretch.to)];
    const ends = walk.reverse ? ([stretch.ends[1], stretch.ends[0]] as const) : stretch.ends;
    return walk.reverse ? { ...stretch, from: b, to: a, ends } : { ...stretch, from: a, to: b, ends };
  });
  const isRing = spans.length === 1 && spans[0].ring;
  const gapAt = (which: 0 | 1) => {
    const part = which === 0 ? parts[0] : parts[parts.length - 1];
    return isRing || !part.chain ? 0 : part.gaps[which];
  };
  const gaps = [gapAt(0), gapAt(1)] as const;
  return {
    fit: {
      seam: ask.seam,
      stitch: ask.sized.stitch.name,
      stretches: walk.reverse ? along.reverse() : along,
      chains: parts.flatMap((part) => (part.chain ? [part.chain] : [])),
      wanted: ask.sized.repeat,
      endGap: walk.reverse ? [gaps[1], gaps[0]] : gaps,
      scale: Math.min(1, ...parts.filter((part) => part.chain).map((part) => part.scale)),
    },
    tucksUnder: ask.manner === 'tuck' ? throughLines(map, lines, line, spans) : [],
    findings: [...bandFindings(line), ...parts.flatMap((part) => part.findings)],
  };
}

function throughLines(
  map: SeamMap,
  lines: Lines,
  line: Line,
  spans: readonly Span[],
): (number | 'outline')[] {
  const under = new Set<number | 'outline'>();
  for (const { junction } of spans.flatMap((span) => [span.start, span.end])) {
    if (junction < 0) continue;
    const joint = map.junctions[junction];
    const through = joint.onOutline ? 'outline' : joint.through;
    if (through === null || through === line.ask.seam || line.ask.shortOf.has(through)) continue;
    if (lines.has(through)) under.add(through);
  }
  return [...under];
}

function bandFindings(line: Line): Finding[] {
  const { ask, band, walk, hand, scale } = line;
  const seam = ask.seam;
  const label = seam === 'outline' ? 'outline' : `seam ${seam}`;
  const findings: Finding[] = [];
  const title = ask.sized.stitch.title.toLowerCase();
  if (scale < 1 - 1e-9) {
    findings.push({
      level: 'note',
      code: 'narrowed-at-junction',
      message:
        `${label}: ${title} is made ${Math.round(scale * 100)} % of its size, because it meets another treatment ` +
        'at a sharp angle; a narrower stitch here, or leaving one of the two bare, gives more room',
      seam,
      at: middleOf(walk, null),
    });
  }
  const unit = ask.sized.build(scale, ask.sized.repeat * scale);
  const wanted = shifted(reachOf(unit, ask.sized.glide, hand), walk.reverse ? -ask.offset : ask.offset);
  let least = 1;
  let where = 0;
  band.u.forEach((u, i) => {
    for (const [values, whole] of [
      [band.left, wanted.left],
      [band.right, wanted.right],
    ] as const) {
      if (whole > 0 && values[i] / whole < least) {
        least = values[i] / whole;
        where = u;
      }
    }
  });
  if (least < NARROW_SHARE) {
    const finder = frameFinder(walk.guide, 0, walk.guide.u.length - 1);
    finder.at(where);
    findings.push({
      level: 'warning',
      code: 'tight-bend',
      message:
        `${label}: ${title} is pressed to ${Math.round(least * 100)} % of its width where the seam bends tightly; ` +
        'a narrower stitch would lie evenly',
      seam,
      at: [finder.frame[0], finder.frame[1]],
    });
  }
  return findings;
}

function middleOf(walk: Walk, span: Span | null): [number, number] {
  const u = span ? (span.start.at + span.end.at) / 2 : walk.guide.length / 2;
  const finder = frameFinder(walk.guide, 0, walk.guide.u.length - 1);
  finder.at(u);
  return [finder.frame[0], finder.frame[1]];
}
