import { distance, type Point } from '../geometry/point.js';
import { SNAP } from '../geometry/tolerances.js';
import { arcAlong, covers, fitCircle } from './sewn-fit.js';
import { lay, type PathSide, type SewnPath, sameSide } from './sewn-path.js';
import { along, away } from './sewn-side.js';

/** A path that comes back to where it started, falls short of it by half a stitch, or overlaps it, is a ring. */
export function closeIfRing(path: SewnPath, allowance: number): SewnPath {
  const { sides } = path;
  const laid = lay(path).points;
  const start = laid[0];
  const end = laid[laid.length - 1];
  if (laid.length < 3 || lengthOf(laid) < 4 * path.stitch) return path;
  const first = sides[0];
  const last = sides[sides.length - 1];
  const over = along(first.side, end) - along(first.side, start);
  const overlaps = Math.abs(away(first.side, end)) <= SNAP && over >= -path.stitch / 2 && over <= allowance;
  const meets = distance(start, end) <= Math.max(SNAP, path.stitch / 2);
  if (!meets && !overlaps) return path;
  const halves = halfCircles(sides.flatMap((side) => side.points));
  if (halves) return { ...path, sides: halves, closed: true };
  if (sides.length > 2 && overlaps) {
    const both = sameSide(last, first);
    if (both) return { ...path, sides: [both, ...sides.slice(1, -1)], closed: true };
  }
  return sides.length > 1 ? { ...path, closed: true } : path;
}

/** A whole circle as two halves, since an arc is less than a circle; null when the points are not on one. */
function halfCircles(points: readonly Point[]): PathSide[] | null {
  const circle = fitCircle(points);
  if (!circle) return null;
  const half = points.length >> 1;
  const parts = [points.slice(0, half), points.slice(half)];
  const sides = parts.map((part) => ({ side: arcAlong(part, circle), points: part }));
  return sides.every(({ side, points: part }) => side && covers(side, part)) ? (sides as PathSide[]) : null;
}

function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) sum += distance(points[i - 1], points[i]);
  return sum;
}
