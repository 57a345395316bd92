import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Reach, reachAt } from '../../src/fit/band.js';
import { bandIn, roomAlong } from '../../src/fit/reach.js';
import { frameFinder, sampleBefore } from '../../src/geometry/guide-frame.js';
import { guideFromLine } from '../../src/geometry/guide-from-line.js';
import { type GuideLine, isStraight } from '../../src/geometry/guide-line.js';
import { fromPoints, type Points } from '../../src/geometry/polyline.js';

const limitedBand = (guide: GuideLine, wanted: Reach, gap: number) =>
  bandIn(roomAlong(guide, Math.max(wanted.left, wanted.right), gap), guide, wanted, gap);

const smooth = (f: (t: number) => readonly [number, number], from: number, to: number, n = 600): Points =>
  fromPoints(Array.from({ length: n + 1 }, (_, i) => f(from + ((to - from) * i) / n)));

/** The most by which the room beside a line differs from what comparing every place with every other gives, mm. */
function unlikeAllPairs(guide: GuideLine, wanted: number): number {
  const room = roomAlong(guide, wanted, 0.6)!;
  // No disc larger than this holds the reach back.
  const most = Math.max(wanted / 0.6, wanted + 0.3);
  const finder = frameFinder(guide, 0, guide.u.length - 1);
  const places = Array.from(room.u, (u) => {
    finder.at(u);
    return Float64Array.from(finder.frame);
  });
  let worst = 0;
  places.forEach(([x, y, theta], i) => {
    const k = Math.min(guide.u.length - 2, sampleBefore(guide.u, room.u[i]));
    let [left, right] = [most, most];
    for (const j of room.u[i] === guide.u[k] && k > 0 ? [k - 1, k] : [k]) {
      const radius = (guide.u[j + 1] - guide.u[j]) / (guide.theta[j + 1] - guide.theta[j]);
      if (radius > 0) right = Math.min(right, radius);
      else left = Math.min(left, -radius);
    }
    for (const [qx, qy] of places) {
      const [dx, dy] = [qx - x, qy - y];
      const square = dx * dx + dy * dy;
      const across = dx * Math.sin(theta) - dy * Math.cos(theta);
      if (square < 0.01 || Math.abs(across) < 1e-9 * square) continue;
      if (across > 0) left = Math.min(left, square / (2 * across));
      else right = Math.min(right, -square / (2 * across));
    }
    worst = Math.max(
      worst,
      Math.abs(Math.min(most, room.left[i]) - left),
      Math.abs(Math.min(most, room.right[i]) - right),
    );
  });
  return worst;
}

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

  test('is what comparing every place with every other gives', () => {
    // A wandering line of waves: bends of every size, bays and hairpins.
    const wander = fc.record({
      amplitude: fc.double({ min: 1, max: 12, noNaN: true }),
      wave: fc.double({ min: 6, max: 40, noNaN: true }),
      sway: fc.double({ min: 0, max: 14, noNaN: true }),
      phase: fc.double({ min: 0, max: 6, noNaN: true }),
    });
    fc.assert(
      fc.property(wander, fc.double({ min: 1, max: 9, noNaN: true }), (shape, wanted) => {
        const { amplitude, wave, sway, phase } = shape;
        const line = smooth(
          (t) => [
            t + sway * Math.sin((5 * t) / wave + phase),
            amplitude * Math.sin((2 * Math.PI * t) / wave) + sway * Math.cos(t / wave),
          ],
          0,
          80,
          1500,
        );
        const guide = guideFromLine(line, [], false);
        expect(unlikeAllPairs(guide, wanted)).toBeLessThan(1e-9);
      }),
      { numRuns: 25 },
    );
  });

  test('is that, too, where a line turns by a right angle at most', () => {
    const leg = fc.tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 5, max: 120 }));
    fc.assert(
      fc.property(
        fc.array(leg, { minLength: 2, maxLength: 15 }),
        fc.integer({ min: 1, max: 9 }),
        (legs, wanted) => {
          let at: readonly [number, number] = [0, 0];
          const corners = legs.map(([degrees, tenths]) => {
            const heading = (degrees * Math.PI) / 180;
            at = [at[0] + (tenths / 10) * Math.cos(heading), at[1] + (tenths / 10) * Math.sin(heading)];
            return at;
          });
          const guide = guideFromLine(fromPoints([[0, 0], ...corners]), [], false);
          fc.pre(!isStraight(guide));
          expect(unlikeAllPairs(guide, wanted)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 200 },
    );
  });

  test('looks no closer than need be at a line drawn in fine zigzags', () => {
    // 1,600 vertices, each eased by an arc: places of every sample of those would be far over a hundred thousand
    const line = fromPoints(Array.from({ length: 1600 }, (_, i) => [0.1 * i, i % 2 ? 3 : -3] as const));
    const guide = guideFromLine(line, [], false);
    expect(roomAlong(guide, 4, 0.6)!.u.length).toBeLessThan(20 * 1600);
    // and yet the tight bends leave no room on their inner sides
    const band = limitedBand(guide, { left: 4, right: 4 }, 0.6);
    expect(Math.max(...band.left, ...band.right)).toBeLessThan(4);
  });
});
