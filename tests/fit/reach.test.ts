import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Reach, reachAt } from '../../src/fit/band.js';
import { bandIn, roomAlong } from '../../src/fit/reach.js';
import { guideFromLine } from '../../src/geometry/guide-from-line.js';
import type { GuideLine } from '../../src/geometry/guide-line.js';
import { fromPoints, type Points } from '../../src/geometry/polyline.js';

const limitedBand = (guide: GuideLine, wanted: Reach, gap: number) =>
  bandIn(roomAlong(guide, Math.max(wanted.left, wanted.right), gap), guide, wanted, gap);

const smooth = (f: (t: number) => readonly [number, number], from: number, to: number, n = 600): Points =>
  fromPoints(Array.from({ length: n + 1 }, (_, i) => f(from + ((to - from) * i) / n)));

describe('how far a treatment reaches along a bend', () => {
  test('on a circle the inner side gets 0.6 of the radius, the outer side all it wants', () => {
    const radius = 5;
    const line = smooth((t) => [radius * Math.cos(t), radius * Math.sin(t)], 0, 2);
    const band = limitedBand(guideFromLine(line, [], false), { left: 4, right: 4 }, 0.6);
    const middle = reachAt(band, 5);
    // y down: rising t walks clockwise, so the center lies to the right
    expect(middle.right).toBeCloseTo(0.6 * radius, 1);
    expect(middle.left).toBe(4);
  });

  test('a straight line limits nothing', () => {
    const band = limitedBand(
      guideFromLine(
        fromPoints([
          [0, 0],
          [50, 0],
        ]),
        [],
        false,
      ),
      { left: 6, right: 3 },
      0.6,
    );
    expect(reachAt(band, 20)).toEqual({ left: 6, right: 3 });
  });

  test('the two arms of a hairpin stay apart by the gap', () => {
    // Two straights 6 mm apart joined by a half circle.
    const line = fromPoints([
      [0, 0],
      [30, 0],
      ...Array.from({ length: 181 }, (_, i) => {
        const t = -Math.PI / 2 + (Math.PI * i) / 180;
        return [30 + 3 * Math.cos(t), 3 + 3 * Math.sin(t)] as const;
      }),
      [0, 6],
    ]);
    const gap = 0.6;
    const band = limitedBand(guideFromLine(line, [], false), { left: 5, right: 5 }, gap);
    for (const u of [5, 15, 25]) expect(2 * reachAt(band, u).right).toBeLessThanOrEqual(6 - gap + 1e-6);
    expect(reachAt(band, 15).left).toBe(5);
  });

  test('nowhere does it fold over (1 - k v >= 0.4), nor change faster than 1 in 4', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 10, noNaN: true }),
        fc.double({ min: 10, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 8, noNaN: true }),
        (height, wave, reach) => {
          const k = (2 * Math.PI) / wave;
          const f = (x: number) => [x, height * Math.sin(k * x)] as const;
          const line = smooth(f, 0, 2 * wave, 2000);
          const guide = guideFromLine(line, [], false);
          const band = limitedBand(guide, { left: reach, right: reach }, 0.6);
          for (let i = 1; i < band.u.length; i++) {
            const run = band.u[i] - band.u[i - 1];
            expect(Math.abs(band.left[i] - band.left[i - 1])).toBeLessThanOrEqual(0.25 * run + 1e-9);
          }
          // Closed form: the tightest bend of a sine is at its crests, curvature height k^2.
          const crest = height * k * k;
          for (let i = 0; i < guide.u.length; i++) {
            const atCrest = Math.abs(Math.abs(guide.y[i]) - height) < 1e-3;
            if (!atCrest) continue;
            const { left, right } = reachAt(band, guide.u[i]);
            const inner = guide.y[i] < 0 ? right : left;
            expect(crest * inner).toBeLessThanOrEqual(0.6 + 0.03);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
