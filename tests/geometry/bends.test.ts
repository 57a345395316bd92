import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bendsOf } from '../../src/geometry/bends.js';
import { guideFromLine } from '../../src/geometry/guide-from-line.js';
import { roundedCorners } from '../../src/geometry/rounded-corners.js';

/** Two sides of 50 mm, turning by `turn` (positive to the left) over an arc of the given radius. */
function bent(turn: number, radius: number) {
  const points = [0, 0, 50, 0, 50 + 50 * Math.cos(turn), -50 * Math.sin(turn)];
  return guideFromLine(
    roundedCorners(Float64Array.from(points), [{ u: 50, turn }], false, () => radius),
    [],
    false,
  );
}

const turns = fc
  .tuple(fc.double({ min: 0.9, max: 2, noNaN: true }), fc.constantFrom(1, -1))
  .map(([turn, hand]) => turn * hand);
const radii = fc.double({ min: 2, max: 12, noNaN: true });

describe('the bends of a line', () => {
  test('an arc between two straights is one, with its turn, about its middle', () => {
    fc.assert(
      fc.property(turns, radii, (turn, radius) => {
        const guide = bent(turn, radius);
        const bends = bendsOf(guide, 1.3 * radius);
        expect(bends).toHaveLength(1);
        // The line is the same from both ends, so the middle of its arc is its own.
        expect(Math.abs(bends[0].u - guide.length / 2)).toBeLessThan(0.1 * radius);
        expect(Math.abs(bends[0].turn - turn)).toBeLessThan(0.27);
      }),
    );
  });

  test('what bends less tightly than asked is none, nor is a whole circle', () => {
    fc.assert(
      fc.property(turns, radii, (turn, radius) => {
        expect(bendsOf(bent(turn, radius), 0.8 * radius)).toEqual([]);
      }),
    );
    const circle = Array.from({ length: 361 }, (_, k) => (k * Math.PI) / 180);
    const points = Float64Array.from(circle.flatMap((a) => [10 * Math.cos(a), 10 * Math.sin(a)]));
    expect(bendsOf(guideFromLine(points, [], true), 20)).toEqual([]);
  });
});
