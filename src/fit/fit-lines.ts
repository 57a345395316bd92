import type { Arm, Junction, SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import type { Manner } from '../formats/dressing.js';
import { frameFinder } from '../geometry/guide-frame.js';
import type { Corner } from '../geometry/guide-line.js';
import { type Band, type Reach, reachAt, shifted } from './band.js';
import type { SeamFit } from './fit.js';
import { fitInPieces } from './fit-pieces.js';
import { leaveOutUnderThrough } from './leave-out.js';
import { bandIn, type Room, roomAlong, SHARE_OF_DISC } from './reach.js';
import { reachOf, type Sized } from './sized.js';
import { type EndRules, type Span, spansOf, type TightPart } from './spans.js';
import { fromSeam, type Rounding, toSeam, type Walk, walkOutline, walkSeam } from './walk.js';

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
const BREAK_TURN = (120 * Math.PI) / 180 + 1e-6;
/** A setback longer than this many reaches, or than this share of the line, narrows both treatments first. */
const LONG_SETBACK = 3;
const LONG_SHARE = 1 / 3;
const NARROWING = 0.85;
/** From 1 to a twentieth takes 19 steps of 0.85; no stitch shrinks further. */
const NARROWING_ROUNDS = 19;
/** A treatment pressed below this share of its reach is no longer itself: the part is left bare. */
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

interface Line extends Way {
  readonly band: Band;
  readonly scale: number;
  /** parts where even this size would be pressed below half its width */
  readonly tight: readonly TightPart[];
}

type Lines = ReadonlyMap<number | 'outline', Line>;

/** What of a line no size changes. */
interface Way {
  readonly ask: LineAsk;
  readonly walk: Walk;
  readonly hand: 1 | -1;
  readonly room: Room | null;
}

function wayOf(map: SeamMap, ask: LineAsk, gap: number): Way {
  const walk = walkOf(map, ask);
  const hand = (ask.side === 'left') === !walk.reverse ? 1 : -1;
  const { left, right } = wantedReach(ask, walk, hand, 1);
  return { ask, walk, hand, room: roomAlong(walk.guide, Math.max(left, right), gap) };
}

function wantedReach(ask: LineAsk, walk: Walk, hand: 1 | -1, scale: number): Reach {
  const unit = ask.sized.build(scale, ask.sized.repeat * scale);
  return shifted(reachOf(unit, ask.sized.glide, hand), walk.reverse ? -ask.offset : ask.offset);
}

/** A line at a scale, or at the smaller one that its tightest bend takes at half its reach or more. */
function bandedLine(way: Way, wanted: number, gap: number): Line {
  const { ask, walk, hand, room } = way;
  for (let scale = wanted; ; scale = Math.max(ask.sized.least, scale * NARROWING)) {
    const reach = wantedReach(ask, walk, hand, scale);
    const band = bandIn(room, walk.guide, reach, gap);
    const tight = tightParts(band, reach);
    if (tight.length === 0 || scale <= ask.sized.least + 1e-9) return { ...way, band, scale, tight };
  }
}

/** Where a band is narrower than half of what was wanted. */
function tightParts(band: Band, wanted: Reach): TightPart[] {
  const isTight = (i: number) =>
    band.left[i] < NARROW_SHARE * wanted.left || band.right[i] < NARROW_SHARE * wanted.right;
  const parts: { from: number; to: number }[] = [];
  for (let i = 0; i < band.u.length; i++) {
    if (!isTight(i)) continue;
    const from = band.u[Math.max(0, i - 1)];
    while (i + 1 < band.u.length && isTight(i + 1)) i++;
    const to = band.u[Math.min(band.u.length - 1, i + 1)];
    const before = parts[parts.length - 1];
    if (before && before.to >= from) before.to = to;
    else parts.push({ from, to });
  }
  return parts;
}

/** Lines with their bands; where an end would stay bare for long, the treatments that meet there made smaller. */
function narrowedLines(map: SeamMap, asks: readonly LineAsk[], rules: FitRules): Lines {
  const lines = new Map<number | 'outline', Line>();
  for (const ask of asks) {
    lines.set(ask.seam, bandedLine(wayOf(map, ask, rules.gap), 1, rules.gap));
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
      lines.set(line.ask.seam, bandedLine(line, scale, rules.gap));
    }
  }
  return lines;
}

function walkOf(map: SeamMap, ask: LineAsk): Walk {
  const at = (junction: number) => map.junctions[junction].at;
  const rounding = roundingFor(ask);
  if (ask.seam === 'outline') {
    const outline = map.outline!;
    return walkOutline(outline, ringStart(outline.corners, []), rounding);
  }
  const seam = map.seams[ask.seam - 1];
  const broken = seam.crossings.filter(({ junction }) => {
    const { through } = map.junctions[junction];
    return through !== null && through !== seam.id;
  });
  const start = seam.closed ? ringStart(seam.corners, broken) : 0;
  return walkSeam(seam, ask.reverse, start, at, rounding);
}

/** A stitch that goes round its corners does so as widely as its full reach needs. */
function roundingFor({ sized }: LineAsk): Rounding | null {
  if (sized.stitch.corner !== 'round') return null;
  const { left, right } = reachOf(sized.build(1, sized.repeat), true, 1);
  return { radius: Math.max(left, right) / SHARE_OF_DISC, isRounded: (turn) => turn <= BREAK_TURN };
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
    tight: line.tight,
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
  const parts = spans.flatMap((span) =>
    fitInPieces(
      {
        seam: ask.seam,
        guide: walk.guide,
        span,
        band: line.band,
        sized: ask.sized,
        scale: line.scale,
        hand: line.hand,
        passes: ask.passes,
        offset: walk.reverse ? -ask.offset : ask.offset,
        middle: (piece) => middleOf(walk, piece),
      },
      rules.gap,
    ),
  );
  const stretches = parts.flatMap((part) => part.stretches);
  const along = stretches.map((stretch) => {
    const ends = walk.reverse ? ([stretch.ends[1], stretch.ends[0]] as const) : stretch.ends;
    const from = toSeam(walk, walk.reverse ? stretch.to : stretch.from);
    // On a ring a stretch may run past the seam's own start: its end then counts on beyond the length.
    const to = from + ((stretch.to - stretch.from) * walk.seamLength) / walk.guide.length;
    return { ...stretch, from, to, ends };
  });
  const isRing = spans.length === 1 && spans[0].ring;
  const gapAt = (which: 0 | 1) => {
    const part = which === 0 ? parts[0] : parts[parts.length - 1];
    return isRing || !part?.chain ? 0 : part.gaps[which];
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
  const { ask, walk, scale, tight } = line;
  const seam = ask.seam;
  const label = seam === 'outline' ? 'outline' : `seam ${seam}`;
  const title = ask.sized.stitch.title.toLowerCase();
  const findings: Finding[] = [];
  if (scale < 1 - 1e-9) {
    findings.push({
      level: 'note',
      code: 'made-smaller',
      message:
        `${label}: ${title} is made ${Math.round(scale * 100)} % of its size, because the seam bends tightly or ` +
        'meets another at a sharp angle; a narrower stitch here gives it more room',
      seam,
      at: middleOf(walk, null),
    });
  }
  const bare = tight.reduce((sum, { from, to }) => sum + to - from, 0);
  if (bare > 0) {
    const finder = frameFinder(walk.guide, 0, walk.guide.u.length - 1);
    finder.at((tight[0].from + tight[0].to) / 2);
    findings.push({
      level: 'warning',
      code: 'tight-bend',
      message:
        `${label}: ${title} leaves ${bare.toFixed(1)} mm bare where the seam bends too tightly for its smallest ` +
        'good size; a narrower stitch would go round',
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
