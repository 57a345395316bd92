import { boxOf } from '../../geometry/box.js';
import { nearestOnSegment } from '../../geometry/nearest.js';
import { between, distance, type Point } from '../../geometry/point.js';
import { fromPoints, type Points, pointAt, pointCount } from '../../geometry/polyline.js';

/** A line that others may run beside, in the frame of the needle points. */
export interface BaseLine {
  readonly points: Points;
  readonly box: ReturnType<typeof boxOf>;
}

export const baseLine = (points: Points): BaseLine => ({ points, box: boxOf([points]) });
export const baseOf = (line: readonly Point[]): BaseLine => baseLine(fromPoints(line));

/** An allowance is no wider than an inch; beyond, two parallel lines are two lines of the block, mm. Common practice. */
const WIDEST_ALLOWANCE = 25.4;
/** Needle points are rounded to machine steps and lie on chords: so far from a constant distance they may be, mm. */
const CONSTANT = 0.35;
/** This share of a line's needle points lies at one distance; the others go round corners, or past an end. */
const SHARE = 0.7;
/** Shorter than this, a line that happens to be parallel says nothing, mm. */
const SHORTEST = 10;
/** Past the end of a line, sewing runs on by no more than a wide seam allowance, mm. */
const PAST_END = 10;
/** So far away no point of a line beside another can lie, round corners and past ends, mm. */
const MOST_AWAY = 2 * WIDEST_ALLOWANCE + CONSTANT;

/**
 * The line that a line of needle points follows at a constant distance: on it (a seam, and what is sewn past its ends) or
 * one allowance beside it. Null when there is none: such a line belongs to nothing and grows with the block.
 */
export function lineBeside(line: readonly Point[], bases: readonly BaseLine[]): BaseLine | null {
  if (lengthOf(line) < SHORTEST) return null;
  const { left, top, right, bottom } = baseOf(line).box;
  let best: { base: BaseLine; far: number } | null = null;
  for (const base of bases) {
    const { box } = base;
    const reach = WIDEST_ALLOWANCE;
    if (box.left > right + reach || box.right < left - reach) continue;
    if (box.top > bottom + reach || box.bottom < top - reach) continue;
    const far = constantDistance(line, base.points);
    // of two lines that it is parallel to, it belongs to the nearer
    if (far !== null && (best === null || far < best.far - CONSTANT)) best = { base, far };
  }
  return best?.base ?? null;
}

function constantDistance(line: readonly Point[], base: Points): number | null {
  // most lines are told to be no such pair by their ends alone
  const isBeyond = (p: Point) => distance(p, nearestOn(p, base).at) > MOST_AWAY;
  if (isBeyond(line[0]) || isBeyond(line[line.length - 1])) return null;
  const places = line.map((p) => ({ p, ...nearestOn(p, base) }));
  const far = places.map(({ p, at }) => distance(p, at));
  const sorted = [...far].sort((a, b) => a - b);
  // measured beside the base, where most points are; those past its ends are further
  const usual = sorted[Math.floor(sorted.length * (SHARE / 2))];
  if (usual > WIDEST_ALLOWANCE) return null;
  const fitting = far.filter((one) => Math.abs(one - usual) <= CONSTANT).length;
  if (fitting < SHARE * far.length) return null;
  const strays = places.some(({ isEnd }, i) => {
    const off = far[i] - usual;
    if (off < -CONSTANT) return true;
    // round a corner of the base a mitred line is further from it, past its end the line runs on
    return off > CONSTANT && (isEnd ? far[i] > usual + PAST_END : far[i] > 2 * usual + CONSTANT);
  });
  return strays ? null : usual;
}

/** The nearest point of a polyline, and whether that is one of its ends. */
export function nearestOn(p: Point, line: Points): { readonly at: Point; readonly isEnd: boolean } {
  let least = Number.POSITIVE_INFINITY;
  let at: Point = p;
  let isEnd = false;
  const last = pointCount(line) - 2;
  const isOpen = line[0] !== line[line.length - 2] || line[1] !== line[line.length - 1];
  for (let i = 0; i <= last; i++) {
    const [a, b] = [pointAt(line, i), pointAt(line, i + 1)];
    const near = nearestOnSegment(p, a, b);
    if (near.distance >= least) continue;
    least = near.distance;
    at = between(a, b, near.t);
    isEnd = isOpen && ((i === 0 && near.t === 0) || (i === last && near.t === 1));
  }
  return { at, isEnd };
}

const lengthOf = (line: readonly Point[]): number =>
  line.slice(1).reduce((sum, p, i) => sum + distance(line[i], p), 0);
