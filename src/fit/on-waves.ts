import { type Finding, lineName } from '../finding.js';
import { guideFromLine } from '../geometry/guide-from-line.js';
import type { Corner, GuideLine } from '../geometry/guide-line.js';
import { wrapAngle } from '../geometry/point.js';
import { cumulativeLength } from '../geometry/polyline.js';
import { roundedCorners } from '../geometry/rounded-corners.js';
import { type Band, type Reach, shifted } from './band.js';
import { countSteps } from './count-steps.js';
import {
  cutsOf,
  endsOf,
  fitSpan,
  gapsOf,
  partsOf,
  type SpanFit,
  type SpanQuestion,
  sizeFindings,
} from './fit-span.js';
import type { Laying, Part } from './lay.js';
import { layRows } from './lay-rows.js';
import { NARROW_SHARE, NARROWING } from './lines.js';
import { cornerMitre, withMetMitres } from './mitre.js';
import { bandIn, roomAlong } from './reach.js';
import { ROUND_SHARE } from './round-corner.js';
import { CREST, type Rows, reachOfRows, wholeOverhang, wholeReach } from './rows.js';
import { stretchLengths } from './span-counts.js';
import type { UnitRun } from './unit-places.js';
import { bestWaveCounts, flanks, type WaveCount } from './wave-counts.js';
import { alongOneWave, type WaveLine, type WaveStretch, type Waves, waveLine } from './waves.js';

/** What one stretch of the line gets. */
type Counted = WaveStretch & WaveCount;

interface Choice {
  readonly scale: number;
  readonly waves: Waves;
  readonly counted: readonly Counted[];
  readonly line: OwnLine;
}

/** The waves as a guide line, in the plane of the seam. */
interface OwnLine extends WaveLine {
  readonly guide: GuideLine;
  /** what the rows may take beside it, and what they want */
  readonly band: Band;
  readonly reach: Reach;
}

/**
 * Whole waves on every stretch of a span, whole repeats on every wave (or whole waves in every repeat), laid along the
 * line as if they were a seam themselves: their own bends and sharp places limit what is worked on them. Where that
 * cannot be, the span is worked plainly, and a finding says why.
 */
export function fitOnWaves(question: SpanQuestion, gap: number): SpanFit {
  const choice = chooseWaves(question, gap);
  if (!choice) {
    const plain = fitSpan({ ...question, rows: { ...question.rows, waves: undefined } });
    return plain.laid ? { ...plain, findings: [...plain.findings, withoutWaves(question)] } : plain;
  }
  const { guide, span, rows } = question;
  const { scale, counted, line } = choice;
  const repeats = counted.map(
    ({ waves, halfRepeats, share }) => (waves / share) * flanks(choice.waves, share) * (halfRepeats / 2),
  );
  const whole = shifted(wholeReach(rows, scale, rows.sized.repeat * scale), question.offset);
  const on: Laying = {
    guide,
    parts: partsOf(
      question,
      counted,
      counted.map(({ from, to }) => to - from),
      counted.map(({ waves }) => 2 * waves),
      whole,
    ),
    band: question.band,
    built: whole,
    closed: span.ring,
    offset: question.offset,
  };
  const laid = (own: OwnLine) => layingOn(on, own, question, choice);
  const first = laid(line);
  const isInterlaced = rows.followers.some(({ mirrored }) => mirrored);
  const mirrored = isInterlaced
    ? laid(ownLine(choice.waves, counted, rows, scale, -waveHand(question) as 1 | -1, gap)).laying
    : first.laying;
  return {
    laid: layRows(rows, first.laying, first.runs, scale, span.ring, cutsOf(question), mirrored),
    stretches: counted.map(({ from, to, waves }, i) => ({
      from,
      to,
      repeats: repeats[i],
      ends: endsOf(span, i, counted.length),
      waves: {
        count: waves,
        along: waves * alongOneWave(choice.waves, (to - from) / waves),
      },
    })),
    gaps: gapsOf(question, 0),
    scale,
    findings: sizeFindings(question, { scale, margin: 0 }),
  };
}

/** Counts that leave nothing over of any row, at the largest size at which there are such; else those of the first row. */
function chooseWaves(question: SpanQuestion, gap: number): Choice | null {
  const { own, filling } = countSteps(question.rows);
  const filled = filling > own ? wavesBy(question, filling, gap) : null;
  return filled ?? wavesBy(question, own, gap);
}

function wavesBy(question: SpanQuestion, filling: number, gap: number): Choice | null {
  const { span, rows } = question;
  const { sized } = rows;
  const hand = waveHand(question);
  const steps = countSteps(rows);
  const least = Math.min(sized.least, question.scale);
  for (let scale = question.scale; ; scale = Math.max(least, scale * NARROWING)) {
    const waves = { ...rows.waves!, height: rows.waves!.height * scale };
    const repeat = sized.repeat * scale;
    const overhang = span.ring ? { start: 0, end: 0 } : wholeOverhang(rows, scale, repeat);
    const lengths = stretchLengths(span, overhang);
    const counts = bestWaveCounts({
      lengths,
      waves,
      repeat,
      own: steps.own,
      filling,
      sharp: waves.shape !== 'wave' && !goesRoundCorners(rows),
      ring: span.ring ? (filling === steps.filling ? steps.ring : 2) : null,
    });
    if (counts) {
      let from = span.ring ? 0 : span.start.at + span.start.setback + overhang.start;
      const turns = turnsAlong(question);
      const counted = counts.map((count, i) => {
        from += lengths[i];
        return { ...count, from: from - lengths[i], to: from, turns: [turns[i], turns[i + 1]] as const };
      });
      const line = ownLine(waves, counted, rows, scale, hand, gap);
      if (goesRound(line)) return { scale, waves, counted, line };
    }
    if (scale <= least + 1e-9) return null;
  }
}

/** What the seam turns at the ends of its stretches, the first one's start first. */
function turnsAlong({ span, guide }: SpanQuestion): number[] {
  const atStart = span.ring ? (guide.corners.find(({ u }) => u === 0)?.turn ?? 0) : 0;
  return [atStart, ...span.corners.map(({ turn }) => turn), atStart];
}

/**
 * To which hand the waves rise first. A zigzag looks the same from both: where its seam has corners their low points lie
 * on the outer side, and cover them instead of cutting across.
 */
function waveHand({ span, guide, rows }: SpanQuestion): 1 | -1 {
  if (rows.waves!.shape !== 'points') return rows.hand;
  const corners = span.ring ? guide.corners : span.corners;
  const turn = corners.reduce((sum, corner) => sum + corner.turn, 0);
  return turn === 0 ? rows.hand : turn > 0 ? 1 : -1;
}

/** A stitch that goes round its corners has no sharp places in its waves. */
const goesRoundCorners = ({ sized }: Rows): boolean => sized.stitch.corner === 'round';

/** The waves as a line; a stitch that goes round corners gets them rounded. */
function ownLine(
  waves: Waves,
  stretches: readonly WaveStretch[],
  rows: Rows,
  scale: number,
  hand: 1 | -1,
  gap: number,
): OwnLine {
  const line = waveLine(waves, stretches, hand);
  // what sits on a crest stands clear of the bends beside it
  const bending = { ...rows, accents: rows.accents.filter(({ seat }) => seat !== CREST) };
  const reach = reachOfRows(bending, scale, rows.sized.repeat * scale);
  const widest = Math.max(reach.left, reach.right);
  const bandOf = (guide: GuideLine) => bandIn(roomAlong(guide, widest, gap), guide, reach, gap);
  if (!goesRoundCorners(rows) || line.corners.length === 0) {
    const guide = guideFromLine(line.points, line.corners, false);
    return { ...line, guide, reach, band: bandOf(guide) };
  }
  const points = roundedCorners(line.points, line.corners, false, () => widest / ROUND_SHARE);
  const guide = guideFromLine(points, [], false);
  const sharp = cumulativeLength(line.points);
  const shorter = guide.length / sharp[sharp.length - 1];
  const crests = line.crests.map((top) => ({ ...top, at: top.at * shorter }));
  return { ...line, corners: [], crests, guide, reach, band: bandOf(guide) };
}

/** Whether the rows can be worked along the waves without folding over, nowhere pressed below half their reach. */
function goesRound({ band, reach }: OwnLine): boolean {
  const isRoomy = (values: Float64Array, wanted: number) =>
    values.every((value) => value >= NARROW_SHARE * wanted - 1e-9);
  return isRoomy(band.left, reach.left) && isRoomy(band.right, reach.right);
}

/** Repeats on the waves, and how they are laid. */
function layingOn(
  on: Laying,
  line: OwnLine,
  { span, rows }: SpanQuestion,
  { scale, counted, waves }: Choice,
): { laying: Laying; runs: UnitRun[] } {
  const { guide, crests, band, reach } = line;
  const { sized } = rows;
  const unitsPer = sized.glide ? 1 : 0.5;
  const sections = sectionsOf(line, counted, waves);
  const runs = sections.map(({ from, to, halfRepeats }): UnitRun => {
    const count = halfRepeats * unitsPer;
    const unit = sized.build(scale, (2 * (to - from)) / halfRepeats);
    return { unit, count, from, length: (to - from) / count };
  });
  const laying: Laying = {
    guide,
    parts: partsBetween(guide, sections, reach, span.ring),
    band,
    built: reach,
    closed: span.ring,
    offset: 0,
    on,
    crests,
  };
  return { laying, runs };
}

interface Section {
  readonly from: number;
  readonly to: number;
  readonly halfRepeats: number;
}

/** Stretches of the waves that hold whole half-repeats: between sharp places, or along all of a smooth line's waves. */
function sectionsOf({ guide }: OwnLine, counted: readonly Counted[], waves: Waves): Section[] {
  const perStretch = counted.map(({ waves: count, halfRepeats, share }) => ({
    sections: guide.corners.length > 0 ? count * flanks(waves, share) : 1,
    halfRepeats:
      guide.corners.length > 0 ? halfRepeats : (count / share) * flanks(waves, share) * halfRepeats,
  }));
  if (guide.corners.length > 0) {
    const bounds = [0, ...guide.corners.map(({ u }) => u), guide.length];
    const halves = perStretch.flatMap(({ sections, halfRepeats }) =>
      new Array<number>(sections).fill(halfRepeats),
    );
    return halves.map((halfRepeats, i) => ({ from: bounds[i], to: bounds[i + 1], halfRepeats }));
  }
  const own = counted.map(({ from, to, waves: count }) => count * alongOneWave(waves, (to - from) / count));
  const all = own.reduce((a, b) => a + b, 0);
  let from = 0;
  return own.map((length, i) => {
    const to = i === own.length - 1 ? guide.length : from + (guide.length * length) / all;
    const section = { from, to, halfRepeats: perStretch[i].halfRepeats };
    from = to;
    return section;
  });
}

/** One part between two sharp places; on a ring the last and the first meet in one. */
function partsBetween(guide: GuideLine, sections: readonly Section[], reach: Reach, ring: boolean): Part[] {
  const { u: us, theta, corners } = guide;
  const plain = { startPoint: null, endPoint: null };
  if (corners.length === 0) {
    return [{ from: 0, to: guide.length, first: 0, last: us.length - 1, start: null, end: null, ...plain }];
  }
  const doubled: number[] = [];
  for (let k = 0; k + 1 < us.length; k++) if (us[k] === us[k + 1]) doubled.push(k);
  const closing: Corner | undefined = ring
    ? { u: 0, turn: -wrapAngle(theta[0] - theta[us.length - 1]) }
    : undefined;
  const parts = sections.map(({ from, to, halfRepeats }, i): Part => {
    const before = i > 0 ? corners[i - 1] : closing;
    const after = i < corners.length ? corners[i] : closing;
    const length = to - from;
    const mitre = (corner: Corner | undefined) =>
      corner ? cornerMitre(corner.turn, reach, (2 * length) / halfRepeats, length) : null;
    return {
      from,
      to,
      first: i > 0 ? doubled[i - 1] + 1 : 0,
      last: i < corners.length ? doubled[i] : us.length - 1,
      start: mitre(before),
      end: mitre(after),
      ...plain,
    };
  });
  return withMetMitres(parts, ring);
}

function withoutWaves({ seam, rows, span, middle }: SpanQuestion): Finding {
  const { shape, height, length } = rows.waves!;
  return {
    level: 'warning',
    code: 'without-waves',
    message:
      `${lineName(seam)}: ${rows.sized.stitch.title.toLowerCase()} is worked without ${shape === 'points' ? shape : `a ${shape}`}, ` +
      `since it cannot follow one of ${height} by ${length} mm here; longer or lower ones, or a narrower stitch, would do`,
    seam,
    at: middle(span),
  };
}
