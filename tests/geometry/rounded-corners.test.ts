import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guideFromLine } from '../../src/geometry/guide-from-line.js';
import { fromPoints, polylineLength } from '../../src/geometry/polyline.js';
import { roundedCorners } from '../../src/geometry/rounded-corners.js';

const bent = (turn: number) =>
  fromPoints([
    [0, 0],
    [50, 0],
    [50 + 50 * Math.cos(turn), -50 * Math.sin(turn)],
  ]);

describe('a rounded corner', () => {
  test('is an arc of the radius asked: length by the closed form L - 2 r tan(tau/2) + r tau', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.4, max: 2, noNaN: true }),
        fc.double({ min: 1, max: 12, noNaN: true }),
        fc.boolean(),
        (turn, radius, left) => {
          const signed = left ? turn : -turn;
          const round = roundedCorners(bent(signed), [{ u: 50, turn: signed }], false, () => radius);
          const closed = 100 - 2 * radius * Math.tan(turn / 2) + radius * turn;
          expect(Math.abs(polylineLength(round) - closed)).toBeLessThan(0.002 * radius);
          const guide = guideFromLine(round, [], false);
          let tightest = 0;
          for (let i = 1; i < guide.u.length; i++) {
            const run = guide.u[i] - guide.u[i - 1];
            if (run > 0) tightest = Math.max(tightest, Math.abs(guide.theta[i] - guide.theta[i - 1]) / run);
          }
          expect(1 / tightest).toBeGreaterThan(0.93 * radius);
        },
      ),
    );
  });

  test('takes less where the sides are short, and never more than its share of them', () => {
    const short = fromPoints([
      [0, 0],
      [10, 0],
      [10, 6],
      [20, 6],
    ]);
    const corners = [
      { u: 10, turn: -Math.PI / 2 },
      { u: 16, turn: Math.PI / 2 },
    ];
    const round = roundedCorners(short, corners, false, () => 20);
    for (let i = 0; i < round.length; i += 2) {
      expect(round[i]).toBeGreaterThanOrEqual(-1e-9);
      expect(round[i]).toBeLessThanOrEqual(20 + 1e-9);
    }
    expect(polylineLength(round)).toBeLessThan(26);
    expect(polylineLength(round)).toBeGreaterThan(Math.hypot(20, 6));
  });

  test('works on a ring whose line starts at a corner', () => {
    const square = fromPoints([
      [0, 0],
      [40, 0],
      [40, 40],
      [0, 40],
      [0, 0],
    ]);
    const corners = [0, 40, 80, 120].map((u) => ({ u, turn: -Math.PI / 2 }));
    const round = roundedCorners(square, corners, true, () => 5);
    expect(polylineLength(round)).toBeCloseTo(160 - 40 + 2 * Math.PI * 5, 1);
    const n = round.length;
    expect(Math.hypot(round[0] - round[n - 2], round[1] - round[n - 1])).toBeLessThan(1e-9);
  });
});
