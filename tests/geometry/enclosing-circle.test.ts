import fc from 'fast-check';
import ConvexHull from 'jsts/org/locationtech/jts/algorithm/ConvexHull.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import { describe, expect, test } from 'vitest';
import { convexHull } from '../../src/geometry/convex-hull.js';
import { enclosingCircle } from '../../src/geometry/enclosing-circle.js';

const place = fc.integer({ min: -5000, max: 5000 }).map((n) => n / 100);
const points = fc
  .array(fc.tuple(place, place), { minLength: 1, maxLength: 40 })
  .map((list) => Float64Array.from(list.flat()));
const ring = (n: number, radius: number, turn = 0.3) =>
  Float64Array.from(
    Array.from({ length: n }, (_, i) => [
      7 + radius * Math.cos(turn + (2 * Math.PI * i) / n),
      -3 + radius * Math.sin(turn + (2 * Math.PI * i) / n),
    ]).flat(),
  );
const distances = (of: Float64Array, x: number, y: number) =>
  Array.from({ length: of.length / 2 }, (_, i) => Math.hypot(of[2 * i] - x, of[2 * i + 1] - y));

describe('the smallest circle round points', () => {
  test('holds them all, and two or three of them on it leave no half of it free', () => {
    // That no half is free is what makes it the smallest: moved any way, the circle would lose one of them.
    fc.assert(
      fc.property(points, (list) => {
        const { x, y, radius } = enclosingCircle(list);
        const away = distances(list, x, y);
        expect(Math.max(...away)).toBeLessThanOrEqual(radius + 1e-9);
        if (radius < 1e-3) return;
        const angles = away
          .flatMap((d, i) =>
            d > radius * (1 - 1e-7) ? [Math.atan2(list[2 * i + 1] - y, list[2 * i] - x)] : [],
          )
          .sort((a, b) => a - b);
        const free = angles.map((angle, i) => (angles[i + 1] ?? angles[0] + 2 * Math.PI) - angle);
        expect(Math.max(...free)).toBeLessThanOrEqual(Math.PI + 1e-3);
      }),
      { numRuns: 300 },
    );
  });

  test('of regular figures goes through their corners', () => {
    for (const n of [2, 3, 4, 7, 90]) {
      const { x, y, radius } = enclosingCircle(ring(n, 12));
      expect([x, y, radius].map((value) => value.toFixed(6))).toEqual(['7.000000', '-3.000000', '12.000000']);
    }
  });
});

describe('a convex hull', () => {
  test('runs clockwise round the area that JTS (jsts) finds', () => {
    const factory = new GeometryFactory();
    fc.assert(
      fc.property(points, (list) => {
        const coordinates = Array.from(
          { length: list.length / 2 },
          (_, i) => new Coordinate(list[2 * i], list[2 * i + 1]),
        );
        const other = new ConvexHull(coordinates, factory).getConvexHull().getArea();
        const hull = convexHull(list);
        let twice = 0;
        for (let i = 0; i + 3 < hull.length; i += 2)
          twice += hull[i] * hull[i + 3] - hull[i + 2] * hull[i + 1];
        expect(twice / 2).toBeCloseTo(other, 6);
      }),
    );
  });
});
