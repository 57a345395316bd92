import type { Point } from './point.js';
import { between } from './point.js';
import { fromPoints, type Points, pointAt, pointCount } from './polyline.js';
import { SAME_POINT } from './tolerances.js';

/** The segment that holds arc length u: the last point at or before it. `at` is the line's cumulative length. */
export function segmentAt(at: Float64Array, u: number): number {
  let low = 0;
  let high = at.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (at[middle] <= u) low = middle;
    else high = middle - 1;
  }
  return Math.max(0, low);
}

/** The point at arc length u along a polyline. */
export function pointAtLength(line: Points, at: Float64Array, u: number): Point {
  const i = segmentAt(at, u);
  const span = at[i + 1] - at[i];
  const t = span > 0 ? Math.min(1, Math.max(0, (u - at[i]) / span)) : 0;
  return between(pointAt(line, i), pointAt(line, i + 1), t);
}

/** The part of a polyline from arc length `from` to `to`; vertices nearer than SAME_POINT to its ends are left out. */
export function partOf(line: Points, at: Float64Array, from: number, to: number): Points {
  const points: Point[] = [pointAtLength(line, at, from)];
  for (let i = segmentAt(at, from) + 1; i < pointCount(line) && at[i] < to - SAME_POINT; i++) {
    if (at[i] > from + SAME_POINT) points.push(pointAt(line, i));
  }
  points.push(pointAtLength(line, at, to));
  return fromPoints(points);
}
