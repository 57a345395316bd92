import { describe, expect, test } from 'vitest';
import { noise } from '../../src/geometry/noise.js';

describe('seeded noise', () => {
  const many = Array.from({ length: 20_000 }, (_, k) => noise(7, k));

  test('is the same for the same keys, and lies from -1 to 1', () => {
    expect(noise(7, 3)).toBe(many[3]);
    expect(Math.min(...many)).toBeGreaterThanOrEqual(-1);
    expect(Math.max(...many)).toBeLessThanOrEqual(1);
  });

  test('is spread evenly: every tenth of the range gets a tenth, within five standard deviations', () => {
    const counts = Array<number>(10).fill(0);
    for (const value of many) counts[Math.min(9, Math.floor((value + 1) * 5))]++;
    // binomial: n p = 2000, sqrt(n p (1 - p)) = 42.4
    expect(Math.max(...counts.map((count) => Math.abs(count - 2000)))).toBeLessThan(5 * 42.5);
  });

  test('neighbors and neighboring seeds are unrelated', () => {
    const correlation = (other: (k: number) => number) =>
      many.reduce((sum, value, k) => sum + value * other(k), 0) / many.length / (1 / 3);
    // of unrelated numbers: 0, with a standard deviation of 1 / sqrt(n) = 0.007
    for (const other of [
      (k: number) => noise(7, k + 1),
      (k: number) => noise(8, k),
      (k: number) => noise(k, 7),
    ]) {
      expect(Math.abs(correlation(other))).toBeLessThan(0.036);
    }
  });
});
