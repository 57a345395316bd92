import { PointInPolygonResult, pointInPolygon } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { insideIndex } from '../../src/geometry/inside-index.js';

/** A star-shaped polygon round (0, 0), seldom convex, in whole numbers as Clipper counts. */
const star = fc.array(fc.integer({ min: 100, max: 1000 }), { minLength: 3, maxLength: 30 }).map((radii) =>
  [...radii, radii[0]].map((radius, k) => {
    const angle = (2 * Math.PI * (k % radii.length)) / radii.length;
    return { x: Math.round(radius * Math.cos(angle)), y: Math.round(radius * Math.sin(angle)) };
  }),
);
const coordinate = fc.integer({ min: -1100, max: 1100 });
const places = fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 20, maxLength: 20 });

test('a place lies inside a ring where Clipper (clipper2-ts) says so', () => {
  fc.assert(
    fc.property(star, places, (ring, many) => {
      const isInside = insideIndex(Float64Array.from(ring.flatMap(({ x, y }) => [x, y])));
      const clear = many.filter((point) => pointInPolygon(point, ring) !== PointInPolygonResult.IsOn);
      expect(clear.map(({ x, y }) => isInside(x, y))).toEqual(
        clear.map((point) => pointInPolygon(point, ring) === PointInPolygonResult.IsInside),
      );
    }),
    { numRuns: 200 },
  );
});
