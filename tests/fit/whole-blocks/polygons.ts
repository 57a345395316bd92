import {
  Clipper,
  EndType,
  FillRule,
  JoinType,
  type Paths64,
  PointInPolygonResult,
  pointInPolygon,
} from 'clipper2-ts';
import type { Points } from '../../../src/geometry/polyline.js';

/** Clipper counts in whole numbers: a tenth of a micrometer. */
const SCALE = 1e4;

/** Polygons as Clipper (clipper2-ts) sees them, a second opinion that shares no code with the program. */
export interface Cloth {
  readonly paths: Paths64;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Polygons joined into one cloth, overlapping or not, whichever way they turn. */
export function clothOf(polygons: readonly Points[]): Cloth {
  const paths = polygons.map((points) => {
    const path = [];
    for (let i = 0; i < points.length; i += 2) {
      path.push({ x: Math.round(points[i] * SCALE), y: Math.round(points[i + 1] * SCALE) });
    }
    return Clipper.isPositive(path) ? path : path.reverse();
  });
  return boxed(Clipper.union(paths, FillRule.NonZero));
}

function boxed(paths: Paths64): Cloth {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of paths.flat()) {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  }
  return { paths, minX, minY, maxX, maxY };
}

/** Area that two cloths share, mm2. */
export function sharedArea(a: Cloth, b: Cloth): number {
  if (a.minX > b.maxX || b.minX > a.maxX || a.minY > b.maxY || b.minY > a.maxY) return 0;
  return Clipper.areaPaths(Clipper.intersect(a.paths, b.paths, FillRule.NonZero)) / SCALE ** 2;
}

/** The cloth made larger on all sides, round its corners, mm; smaller when negative. */
export const inflated = ({ paths }: Cloth, by: number): Cloth =>
  boxed(Clipper.inflatePaths(paths, by * SCALE, JoinType.Round, EndType.Polygon, 2, SCALE / 500));

/** Whether a place in mm lies on the cloth. */
export function isOn({ paths }: Cloth, x: number, y: number): boolean {
  const point = { x: Math.round(x * SCALE), y: Math.round(y * SCALE) };
  let inside = 0;
  for (const path of paths) {
    if (pointInPolygon(point, path) !== PointInPolygonResult.IsOutside) inside++;
  }
  return inside % 2 === 1;
}
