import { guideFromLine } from '../geometry/guide-from-line.js';
import type { LineIndex } from '../geometry/line-index.js';
import { roundedCorners } from '../geometry/rounded-corners.js';
import { settledAt } from './about-bends.js';
import { evenBand, type Reach, shifted } from './band.js';
import { bareRuns, COVERED, longest } from './bare-run.js';
import { layRows } from './lay-rows.js';
import type { Rows } from './rows.js';
import { threadSeen } from './thread-seen.js';

/** Repeats on the cloth are a little longer or shorter than these: what thread covers by no more than a hair is not counted on. */
const SURELY = 0.9;
/** Repeats to both sides of the arc that are looked at. */
const BESIDE = 1.5;
/** An arc that passes the corner so near leaves it covered, mm. */
const NEAR = 1;
/** Where no unit is set at the middle of a bend, it is tried at so many places of a repeat. */
const PHASES = 4;

/**
 * How much more of a seam stays bare, in one piece, where rows go round a corner of it on an arc than on a straight, mm:
 * the arc cuts off the corner, which only strokes to its outside still cover. The rows are laid there at full size.
 *
 * @param radius of the arc, mm
 * @param turn radians, positive to the left
 * @param offset of the rows from the line, mm to its left
 * @param covered how far away thread covers the seam, mm
 */
export function bareRound(
  rows: Rows,
  reach: Reach,
  offset: number,
  radius: number,
  turn: number,
  covered = COVERED,
): number {
  const touching = radius * Math.tan(Math.abs(turn) / 2);
  // where the arc itself passes near, so does its thread
  if (touching * Math.tan(Math.abs(turn) / 4) <= NEAR) return 0;
  const { repeat } = rows.sized;
  const side = touching + (BESIDE + 1.5) * repeat;
  const seen = touching + BESIDE * repeat;
  const settled = settledAt(rows, rows.sized.build(1, repeat), turn > 0 ? -1 : 1);
  const phases = settled
    ? [settled]
    : Array.from({ length: PHASES }, (_, k) => ({ at: (k * repeat) / PHASES, hand: rows.hand }));
  const most = Math.max(
    ...phases.map((phase) => {
      const seam = (s: number): [number, number] =>
        s < 0 ? [s, 0] : [s * Math.cos(turn), -s * Math.sin(turn)];
      const points = Float64Array.of(...seam(-side), 0, 0, ...seam(side));
      const line = roundedCorners(points, [{ u: side, turn }], false, () => radius);
      return longest(
        bareRuns(threadAbout(rows, reach, offset, line, phase), seam, -seen, seen, SURELY * covered),
      );
    }),
  );
  return most <= covered ? 0 : most - bareOnStraight(rows, reach, offset, covered);
}

/** What rows leave bare of a straight seam anyway, in one piece, mm: at full size. */
export function bareOnStraight(rows: Rows, reach: Reach, offset: number, covered = COVERED): number {
  const { repeat } = rows.sized;
  const side = (BESIDE + 1.5) * repeat;
  const thread = threadAbout(rows, reach, offset, Float64Array.of(-side, 0, side, 0), {
    at: 0,
    hand: rows.hand,
  });
  return longest(bareRuns(thread, (s) => [s, 0], -BESIDE * repeat, BESIDE * repeat, covered));
}

/** Which place of a unit stands at the middle of a line, mm from its start, and the unit's hand. */
interface Phase {
  readonly at: number;
  readonly hand: 1 | -1;
}

/** What is seen of the rows, along nearly all of a line. */
function threadAbout(
  rows: Rows,
  reach: Reach,
  offset: number,
  line: Float64Array,
  { at, hand }: Phase,
): LineIndex {
  const { sized } = rows;
  const guide = guideFromLine(line, [], false);
  const unit = sized.build(1, sized.repeat);
  const { length } = unit;
  const before = Math.floor((guide.length / 2 - at) / length);
  const from = guide.length / 2 - at - before * length;
  const count = Math.floor((guide.length - from) / length);
  const plain = { start: null, end: null, startPoint: null, endPoint: null };
  const own = shifted(reach, offset);
  const laying = {
    guide,
    parts: [{ from: 0, to: guide.length, first: 0, last: guide.u.length - 1, ...plain }],
    band: evenBand(guide, own),
    built: own,
    closed: false,
    offset,
  };
  const isOther = sized.glide && before % 2 !== 0;
  const alone = { ...rows, hand: (isOther ? -hand : hand) as 1 | -1, accents: [], uneven: undefined };
  const cuts = { thread: [], figures: [], within: null };
  const { layers } = layRows(alone, laying, [{ unit, count, from, length }], 1, false, cuts);
  return threadSeen(layers.flatMap(({ chains }) => chains));
}
