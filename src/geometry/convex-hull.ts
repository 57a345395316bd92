import type { Points } from './polyline.js';

/**
 * The convex hull of points x0 y0 x1 y1 ... as a closed polyline, clockwise as drawn (y down); points on its sides are left
 * out. Andrew's monotone chain (Andrew 1979, Another efficient algorithm for convex hulls in two dimensions; from memory).
 * Of fewer than three points, or points in a line, what there is there and back.
 */
export function convexHull(points: Points): Points {
  const order = Array.from({ length: points.length / 2 }, (_, i) => i);
  order.sort((a, b) => points[2 * a] - points[2 * b] || points[2 * a + 1] - points[2 * b + 1]);
  const there = chain(points, order);
  const back = chain(points, order.reverse());
  const ring = [...there, ...back.slice(1)];
  return Float64Array.from(ring.flatMap((i) => [points[2 * i], points[2 * i + 1]]));
}

function chain(points: Points, order: readonly number[]): number[] {
  const kept: number[] = [];
  for (const i of order) {
    while (kept.length > 1 && !turnsRight(points, kept[kept.length - 2], kept[kept.length - 1], i))
      kept.pop();
    kept.push(i);
  }
  return kept;
}

/** As drawn, with y down. */
function turnsRight(points: Points, a: number, b: number, c: number): boolean {
  const [ax, ay] = [points[2 * a], points[2 * a + 1]];
  const across =
    (points[2 * b] - ax) * (points[2 * c + 1] - ay) - (points[2 * b + 1] - ay) * (points[2 * c] - ax);
  return across > 0;
}
