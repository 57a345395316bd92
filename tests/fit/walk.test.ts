import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Seam } from '../../src/block/seam-map.js';
import { walkSeam } from '../../src/fit/walk.js';
import { frameFinder } from '../../src/geometry/guide-frame.js';
import { cumulativeLength, fromPoints } from '../../src/geometry/polyline.js';

const seam = (points: readonly (readonly [number, number])[], more: Partial<Seam> = {}): Seam => ({
  id: 1,
  closed: false,
  points: fromPoints(points),
  corners: [],
  ends: null,
  crossings: [],
  sides: [],
  ...more,
});

describe('a seam as it is walked', () => {
  test('finds each junction at the place of the eased line that lies nearest, walked either way', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1.2, max: 1.2, noNaN: true }), { minLength: 8, maxLength: 40 }),
        fc.boolean(),
        (steps, reverse) => {
          // a line drawn point by point, which easing moves, with a junction at every third vertex
          const points = steps.map((y, i) => [2 * i, y] as const);
          const at = cumulativeLength(fromPoints(points));
          const junctions = points.flatMap((_, i) => (i % 3 === 1 ? [i] : []));
          const walk = walkSeam(
            seam(points, { crossings: junctions.map((i, junction) => ({ u: at[i], junction })) }),
            reverse,
            0,
            (junction) => points[junctions[junction]],
          );
          const finder = frameFinder(walk.guide, 0, walk.guide.u.length - 1);
          const away = (u: number, [x, y]: readonly [number, number]) => {
            finder.at(u);
            return Math.hypot(finder.frame[0] - x, finder.frame[1] - y);
          };
          let worst = 0;
          for (const { u, junction } of walk.crossings) {
            const point = points[junctions[junction]];
            let nearest = Infinity;
            for (let v = 0; v <= walk.guide.length; v += 0.01) nearest = Math.min(nearest, away(v, point));
            worst = Math.max(worst, away(u, point) - nearest);
          }
          expect(walk.crossings).toHaveLength(junctions.length);
          expect(worst).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('keeps sharp corners where they are while the others are rounded', () => {
    const points = [
      [0, 0],
      [30, 0],
      [30, 30],
      [10, 10],
      [60, 10],
      [40, 20],
    ] as const;
    const at = cumulativeLength(fromPoints(points));
    const turns = [-Math.PI / 2, (-3 * Math.PI) / 4, (3 * Math.PI) / 4, -2.68];
    const line = seam(points, { corners: turns.map((turn, i) => ({ u: at[i + 1], turn })) });
    const isRounded = (turn: number) => Math.abs(turn) < 2;
    const { guide } = walkSeam(line, false, 0, () => [0, 0], { radius: () => 5, isRounded, atEnds: 0 });
    const finder = frameFinder(guide, 0, guide.u.length - 1);
    const corners = guide.corners.map(({ u }) => {
      finder.at(u);
      return [finder.frame[0], finder.frame[1]].map((value) => Math.round(value * 1000) / 1000);
    });
    expect(corners).toEqual([
      [30, 30],
      [10, 10],
      [60, 10],
    ]);
  });
});
