import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaOf, type Band } from '../../src/fit/band.js';

const band: Band = {
  u: Float64Array.of(0, 10, 20),
  left: Float64Array.of(2, 4, 4),
  right: Float64Array.of(3, 3, 1),
};

describe('the cloth that a band reaches over', () => {
  test('is a sum of trapezoids', () => {
    expect(areaOf(band, 0, 10)).toBeCloseTo(10 * (3 + 3));
    expect(areaOf(band, 10, 20)).toBeCloseTo(10 * (4 + 2));
  });

  test('is that of its parts together', () => {
    const u = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(u, u, u, (...us) => {
        const [a, b, c] = us.sort((x, y) => x - y);
        expect(areaOf(band, a, c)).toBeCloseTo(areaOf(band, a, b) + areaOf(band, b, c), 9);
      }),
    );
  });
});
