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

/** The line that a place lies on, by its number; null when it lies on none. */
export function lineUnder(p: Point, lines: ReadonlyMap<number, Points>): number | null {
  let [under, least] = [null as number | null, ON_LINE];
  for (const [id, points] of lines) {
    const { distance } = footOn(points, p);
    if (distance > least || (distance === least && under !== null)) continue;
    [under, least] = [id, distance];
  }
  return under;
}

/**
 * Where a place on a line is once the lines have moved: as far along it as before; null when it lay on none, or its line is gone.
 * @param meant the line it belongs to, where it may lie on several: seams end on other lines
 */
export function carriedPoint(
  p: Point,
  was: ReadonlyMap<number, Points>,
  is: ReadonlyMap<number, Points>,
  meant: number | null = null,
): Point | null {
  const own = meant === null ? undefined : was.get(meant);
  const id = own && footOn(own, p).distance <= ON_LINE ? meant : lineUnder(p, was);
  const [from, to] = id === null ? [] : [was.get(id), is.get(id)];
  if (!from || !to) return null;
  return alongShare(to, footOn(from, p).u / (cumulativeLength(from).at(-1) || 1));
}

/** The place a share of the way along a line. */
export function alongShare(points: Points, share: number): Point {
  if (pointCount(points) < 2) return pointAt(points, 0);
  const at = cumulativeLength(points);
  return pointAtLength(points, at, share * at[at.length - 1]);
}
