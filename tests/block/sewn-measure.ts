import DiscreteHausdorffDistance from 'jsts/org/locationtech/jts/algorithm/distance/DiscreteHausdorffDistance.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import { distance, type Point } from '../../src/geometry/point.js';

const factory = new GeometryFactory();
const lineString = (points: readonly Point[]) =>
  factory.createLineString(points.map(([x, y]) => new Coordinate(x, y)));

/** Furthest that either line strays from the other, mm, measured by jsts on lines divided finer than 2 mm. */
function apart(a: readonly Point[], b: readonly Point[]): number {
  const share = Math.max(a.length, b.length) > 10 ? 0.5 : 0.02;
  return DiscreteHausdorffDistance.distance(lineString(thinned(a)), lineString(thinned(b)), share);
}

/** Every fourth point of a finely divided curve, and both ends of longer chords: that loses 0.04 mm at the most. */
function thinned(line: readonly Point[]): readonly Point[] {
  if (line.length < 60) return line;
  const long = (i: number) => i > 0 && i < line.length && distance(line[i - 1], line[i]) > 2;
  return line.filter((_, i) => i % 4 === 0 || i === line.length - 1 || long(i) || long(i + 1));
}

/** How far the nearest of some lines strays from a line, mm; lines whose boxes differ by a millimeter are not measured. */
export function nearestTo(line: readonly Point[], others: readonly (readonly Point[])[]): number {
  const box = boxOf(line);
  const near = others.filter((other) => boxOf(other).every((side, i) => Math.abs(side - box[i]) < 1));
  return Math.min(Number.POSITIVE_INFINITY, ...near.map((other) => apart(line, other)));
}

function boxOf(line: readonly Point[]): number[] {
  const xs = line.map((p) => p[0]);
  const ys = line.map((p) => p[1]);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
