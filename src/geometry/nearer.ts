import { insideRings } from './area.js';
import { boxOf } from './box.js';
import { nearestOnSegment } from './nearest.js';
import type { Point } from './point.js';
import type { Points } from './polyline.js';

/**
 * Whether two polygons, each repeating its first point, overlap or lie nearer to each other than `least`.
 * Cost: sides of the one times sides of the other, where boxes meet.
 */
export function nearer(a: Points, b: Points, least: number): boolean {
  if (insideRings([b[0], b[1]], [a]) || insideRings([a[0], a[1]], [b])) return true;
  const box = boxOf([b]);
  for (let i = 0; i + 2 < a.length; i += 2) {
    const [p, q] = sideOf(a, i);
    if (Math.min(p[0], q[0]) > box.right + least || Math.max(p[0], q[0]) < box.left - least) continue;
    if (Math.min(p[1], q[1]) > box.bottom + least || Math.max(p[1], q[1]) < box.top - least) continue;
    for (let k = 0; k + 2 < b.length; k += 2) {
      const [r, s] = sideOf(b, k);
      if (apart(p, q, r, s) < least) return true;
    }
  }
  return false;
}

function sideOf(points: Points, i: number): [Point, Point] {
  return [
    [points[i], points[i + 1]],
    [points[i + 2], points[i + 3]],
  ];
}

/** How far two segments are apart; 0 where they cross. */
function apart(p: Point, q: Point, r: Point, s: Point): number {
  if (side(p, q, r) > 0 !== side(p, q, s) > 0 && side(r, s, p) > 0 !== side(r, s, q) > 0) return 0;
  return Math.min(
    nearestOnSegment(p, r, s).distance,
    nearestOnSegment(q, r, s).distance,
    nearestOnSegment(r, p, q).distance,
    nearestOnSegment(s, p, q).distance,
  );
}

function side(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
