import type { Corner } from './guide-line.js';
import { cumulativeLength, type Points, pointCount } from './polyline.js';
import { SAME_POINT } from './tolerances.js';

/**
 * A closed polyline started at another place along it, its corners moved along. The new start becomes a vertex.
 *
 * @param start arc length of the new start, 0 to the length
 */
export function ringFrom(
  points: Points,
  corners: readonly Corner[],
  start: number,
): { readonly points: Points; readonly corners: Corner[] } {
  const n = pointCount(points);
  const at = cumulativeLength(points);
  const length = at[n - 1];
  let first = 0;
  while (first < n && at[first] < start - SAME_POINT) first++;
  const onVertex = first < n && Math.abs(at[first] - start) <= SAME_POINT;
  const xy: number[] = [];
  if (!onVertex && first < n) {
    const t = (start - at[first - 1]) / (at[first] - at[first - 1]);
    for (const k of [0, 1]) {
      xy.push(points[2 * first - 2 + k] + t * (points[2 * first + k] - points[2 * first - 2 + k]));
    }
  }
  for (let i = first; i < n; i++) xy.push(points[2 * i], points[2 * i + 1]);
  for (let i = 1; i < first; i++) xy.push(points[2 * i], points[2 * i + 1]);
  if (onVertex && first > 0) xy.push(points[2 * first], points[2 * first + 1]);
  else if (!onVertex) xy.push(xy[0], xy[1]);
  const moved = corners.map(({ u, turn }) => {
    const shifted = (u - start + length) % length;
    return { u: length - shifted < SAME_POINT ? 0 : shifted, turn };
  });
  return { points: Float64Array.from(xy), corners: moved.sort((a, b) => a.u - b.u) };
}
