import { type DrawnSeam, type SeamDrawing, subpathOfSeam } from '../../src/formats/seam-drawing.js';
import { flattenSubpath } from '../../src/formats/svg-flatten.js';
import { nearestOnSegment } from '../../src/geometry/nearest.js';
import type { Point } from '../../src/geometry/point.js';
import { cumulativeLength, type Points, pointAt, pointCount } from '../../src/geometry/polyline.js';
import { pointAtLength } from '../../src/geometry/polyline-part.js';

const known = new WeakMap<DrawnSeam, Points>();

/** A line's points, as the reader of drawings will have them; of a line without length, its first node. */
export function pointsOfSeam(line: DrawnSeam): Points {
  let points = known.get(line);
  if (!points) {
    points = flattenSubpath(subpathOfSeam(line))?.points ?? Float64Array.of(...line.nodes[0].at);
    known.set(line, points);
  }
  return points;
}

/** All lines of a drawing by their numbers, the outline among them. */
export const linePoints = ({ outline, lines }: SeamDrawing): ReadonlyMap<number, Points> =>
  new Map([...(outline ? [outline] : []), ...lines].map((line) => [line.id, pointsOfSeam(line)]));

/** Where a line comes nearest to a place. */
export interface Foot {
  readonly at: Point;
  /** mm */
  readonly distance: number;
  /** along the line, mm from its start */
  readonly u: number;
}

export function footOn(points: Points, p: Point): Foot {
  const at = cumulativeLength(points);
  let foot: Foot = { at: pointAt(points, 0), distance: Number.POSITIVE_INFINITY, u: 0 };
  for (let i = 0; i + 1 < pointCount(points); i++) {
    const { t, distance } = nearestOnSegment(p, pointAt(points, i), pointAt(points, i + 1));
    if (distance >= foot.distance) continue;
    const u = at[i] + t * (at[i + 1] - at[i]);
    foot = { at: pointAtLength(points, at, u), distance, u };
  }
  return foot;
}

/** What lies this near to a line lies on it, mm: ends are drawn on lines to 0.001, and lines are joined within 0.3. */
export const ON_LINE = 0.35;

/** Where a place on one of the lines is once the lines have moved: as far along it as before; null when it lay on none. */
export function carriedPoint(
  p: Point,
  was: ReadonlyMap<number, Points>,
  is: ReadonlyMap<number, Points>,
): Point | null {
  let best: { id: number; foot: Foot } | null = null;
  for (const [id, points] of was) {
    const foot = footOn(points, p);
    if (foot.distance <= ON_LINE && (!best || foot.distance < best.foot.distance)) best = { id, foot };
  }
  const to = best && is.get(best.id);
  if (!best || !to) return null;
  return alongShare(to, best.foot.u / (cumulativeLength(was.get(best.id)!).at(-1) || 1));
}

/** The place a share of the way along a line. */
export function alongShare(points: Points, share: number): Point {
  if (pointCount(points) < 2) return pointAt(points, 0);
  const at = cumulativeLength(points);
  return pointAtLength(points, at, share * at[at.length - 1]);
}
