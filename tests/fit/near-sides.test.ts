import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Side, sideOf } from '../../src/fit/beside-pair.js';
import { nearSides } from '../../src/fit/near-sides.js';

/** A short line of two places, and what its treatment reaches. */
const side = (x: number, y: number, reach: number): Side =>
  sideOf(
    {
      u: Float64Array.of(0, 5),
      x: Float64Array.of(x, x + 5),
      y: Float64Array.of(y, y),
      nx: Float64Array.of(0, 0),
      ny: Float64Array.of(-1, -1),
      leftPatch: Int32Array.of(-1, -1),
      rightPatch: Int32Array.of(-1, -1),
      step: 5,
    },
    { left: reach, right: reach },
  );

const place = fc.double({ min: 0, max: 60, noNaN: true });
const sides = fc.array(fc.tuple(place, place, fc.double({ min: 1, max: 8, noNaN: true })), {
  minLength: 2,
  maxLength: 25,
});

describe('lines that may press each other', () => {
  test('are found anew where few have changed as they would be from the start', () => {
    fc.assert(
      fc.property(
        sides,
        fc.array(fc.tuple(fc.nat(), place, place), { minLength: 1, maxLength: 4 }),
        (all, changes) => {
          let now = all.map((one) => side(...one));
          let near = nearSides(now, 0.6, null);
          for (const [k, x, y] of changes) {
            now = now.map((one, i) => (i === k % now.length ? side(x, y, 3) : one));
            near = nearSides(now, 0.6, near);
            expect(near.later).toEqual(nearSides(now, 0.6, null).later);
          }
        },
      ),
    );
  });

  test('are all that are nearer than both reach, and no others', () => {
    const [a, b, c] = [side(0, 0, 3), side(0, 6.5, 3), side(0, 14, 3)];
    expect(nearSides([a, b, c], 0.6, null).later).toEqual([[1], [], []]);
    expect(nearSides([a, side(0, 6.7, 3), c], 0.6, null).later).toEqual([[], [], []]);
  });
});
