import { type Point, wrapAngle } from '../geometry/point.js';
import { covers, fitArc, fitLine, LEAST_ON_ARC } from './sewn-fit.js';
import { away, type Side } from './sewn-side.js';

/** A stitch along an arc turns at most this much from the one before: 4 mm on a radius of 7 mm with its rounding. */
const ARC_TURN = (40 * Math.PI) / 180;

/** A stretch of needle points and what they follow; a single point that fits nowhere has no side. */
export interface Stretch {
  readonly points: readonly Point[];
  readonly side: Side | null;
}

/** What a kind of stretch costs: fewest stretches first, lines before arcs, two lines dearer than one arc. */
const COST = { line: 2, arc: 3, stray: 1.5 };
/** At an end of the line a point left out would shorten it. */
const STRAY_END = 2.5;

/**
 * The cheapest cover of needle points, in order, by lines and arcs that stray at most STRAY from them.
 * @param onOther whether the first and last point lie on another line, which this one leaves or reaches between holes
 */
export function coverPass(
  points: readonly Point[],
  onOther: readonly [boolean, boolean] = [false, false],
): Stretch[] {
  const n = points.length;
  const cost = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const error = new Float64Array(n + 1);
  const from = new Int32Array(n + 1);
  const sides: (Side | null)[] = new Array(n + 1).fill(null);
  cost[0] = 0;
  const offer = (i: number, end: number, side: Side | null, price: number, strays: number) => {
    const dearer = cost[i] + price - cost[end];
    if (dearer > 0 || (dearer === 0 && error[i] + strays >= error[end])) return;
    cost[end] = cost[i] + price;
    error[end] = error[i] + strays;
    from[end] = i;
    sides[end] = side;
  };
  for (let i = 0; i < n; i++) {
    const isEnd = (i === 0 && !onOther[0]) || (i === n - 1 && !onOther[1]);
    offer(i, i + 1, null, isEnd ? STRAY_END : COST.stray, 0);
    let [lineFits, misses] = [true, 0];
    for (let end = i + 2; end <= n && misses < LEAST_ON_ARC; end++) {
      // what is reached more cheaply already needs no fit: a straight run costs its own length, not its square
      if (cost[i] + COST.line > cost[end]) continue;
      const part = points.slice(i, end);
      const side = sideFor(part, lineFits, cost[i] + COST.arc <= cost[end]);
      if (side?.kind !== 'line') lineFits = false;
      misses = side ? 0 : misses + 1;
      if (side) offer(i, end, side, COST[side.kind], squares(side, part));
    }
  }
  const stretches: Stretch[] = [];
  for (let end = n; end > 0; end = from[end]) {
    stretches.unshift({ points: points.slice(from[end], end), side: sides[end] });
  }
  return stretches;
}

function sideFor(points: readonly Point[], tryLine: boolean, tryArc: boolean): Side | null {
  if (tryLine) {
    const line = fitLine(points);
    if (covers(line, points)) return line;
  }
  if (!tryArc || points.length < LEAST_ON_ARC || sharpestTurn(points) > ARC_TURN) return null;
  const arc = fitArc(points);
  return arc && covers(arc, points) ? arc : null;
}

function sharpestTurn(points: readonly Point[]): number {
  let sharpest = 0;
  let before: number | null = null;
  for (let i = 1; i < points.length; i++) {
    const direction = Math.atan2(points[i][1] - points[i - 1][1], points[i][0] - points[i - 1][0]);
    if (before !== null) sharpest = Math.max(sharpest, Math.abs(wrapAngle(direction - before)));
    before = direction;
  }
  return sharpest;
}

const squares = (side: Side, points: readonly Point[]): number =>
  points.reduce((sum, p) => sum + away(side, p) ** 2, 0);
