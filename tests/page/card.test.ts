import fc from 'fast-check';
import { expect, it } from 'vitest';
import { shownOf } from '../../page/draw/card.js';

const side = fc.integer({ min: 80, max: 400 });

it('a card of the edge of a block shows a side of it, whichever corner the edge begins at', () => {
  fc.assert(
    fc.property(side, side, fc.integer({ min: 0, max: 3 }), (width, height, from) => {
      const corners = [
        [0, 0],
        [width, 0],
        [width, height],
        [0, height],
      ];
      const ring = [...corners.slice(from), ...corners.slice(0, from), corners[from]];
      const [x, y, across] = shownOf(Float64Array.from(ring.flat()));
      const off = Math.min(...corners.map(([u, v]) => Math.hypot(u - x, v - y)));
      expect(off).toBeCloseTo(Math.max(width, height) / 2, 6);
      expect(off).toBeGreaterThan(across / 2);
      expect([x, y].some((at) => at === 0 || at === width || at === height)).toBe(true);
    }),
  );
});

it('a card of a seam shows its middle', () => {
  expect(shownOf(Float64Array.of(0, 10, 200, 10)).slice(0, 2)).toEqual([100, 10]);
  expect(shownOf(Float64Array.of(0, 10, 30, 20)).slice(0, 2)).toEqual([15, 15]);
});
