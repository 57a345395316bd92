import fc from 'fast-check';
import { expect, test } from 'vitest';
import { longWay } from '../../src/geometry/long-way.js';

const rectangle = (long: number, wide: number, angle: number, x = 40, y = -20) => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return Float64Array.from(
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
      [-1, -1],
    ].flatMap(([a, b]) => [x + a * long * cos - b * wide * sin, y + a * long * sin + b * wide * cos]),
  );
};

test('a rectangle turned any way lies along its longer side, as many times as long as wide', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1.05, max: 9, noNaN: true }),
      fc.double({ min: -1.5, max: 1.5, noNaN: true }),
      fc.boolean(),
      (times, angle, back) => {
        const ring = rectangle(5 * times, 5, angle);
        const { direction, times: found } = longWay([back ? ring.slice().reverse() : ring]);
        // reversed, x and y change places: the rectangle is mirrored on the diagonal
        expect(Math.sin(direction - (back ? Math.PI / 2 - angle : angle))).toBeCloseTo(0, 6);
        expect(found).toBeCloseTo(times, 6);
      },
    ),
  );
});

test('a hole takes away: a square with a level slot in it lies upright', () => {
  const { direction, times } = longWay([rectangle(10, 10, 0), rectangle(8, 2, 0)]);
  expect(times).toBeGreaterThan(1.01);
  expect(Math.abs(direction)).toBeCloseTo(Math.PI / 2, 6);
});
