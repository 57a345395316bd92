import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plateRoom } from '../../../src/draw/overlays/plate-room.js';

const coordinate = fc.integer({ min: 0, max: 400 }).map((n) => n / 10);
const line = fc
  .array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 6 })
  .map((points) => Float64Array.from(points.flat()));
const things = fc.array(fc.array(line, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 60 });

/** Room enough. */
const wide = { left: -100, top: -100, right: 140, bottom: 140 };

describe('plates of many lines', () => {
  test('do not cover one another, nor what lay there before', () => {
    fc.assert(
      fc.property(things, fc.array(fc.tuple(coordinate, coordinate), { maxLength: 8 }), (all, taken) => {
        const places = plateRoom(all, 4, wide, taken).flatMap((spot) => (spot ? [spot.at] : []));
        const near = places.flatMap(([x, y], i) =>
          [...taken, ...places.slice(0, i)].filter(([px, py]) => Math.hypot(x - px, y - py) < 4),
        );
        expect(near).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('lie on their own lines, or are led to a place on them', () => {
    fc.assert(
      fc.property(things, (all) => {
        const stray = plateRoom(all, 4, wide).filter((spot, i) => {
          if (!spot) return false;
          const { at, on } = spot;
          const points = all[i].flatMap((xy) =>
            Array.from({ length: xy.length / 2 }, (_, k) => [xy[2 * k], xy[2 * k + 1]]),
          );
          const isOwn = points.some(([x, y]) => x === on[0] && y === on[1]);
          return !isOwn || (at !== on && Math.hypot(at[0] - on[0], at[1] - on[1]) < 4);
        });
        expect(stray).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('of a line sewn ten times over lie in as many places, the first in its middle', () => {
    const again = Array.from({ length: 10 }, () => [Float64Array.of(10, 10, 12, 10, 14, 10)]);
    const spots = plateRoom(again, 4, wide).map((spot) => spot!);
    expect(spots[0]).toEqual({ at: [12, 10], on: [12, 10] });
    expect(new Set(spots.map(({ at }) => String(at))).size).toBe(10);
    expect(Math.max(...spots.map(({ at, on }) => Math.hypot(at[0] - on[0], at[1] - on[1])))).toBeLessThan(12);
  });

  test('stay within the cloth, and are left out where it is full', () => {
    const again = Array.from({ length: 60 }, () => [Float64Array.of(10, 10, 12, 10, 14, 10)]);
    const spots = plateRoom(again, 4, { left: 0, top: 0, right: 20, bottom: 20 });
    const kept = spots.flatMap((spot) => (spot ? [spot.at] : []));
    expect(kept.length).toBeGreaterThan(10);
    expect(kept.length).toBeLessThan(60);
    expect(kept.filter(([x, y]) => Math.min(x, y) < 0 || Math.max(x, y) > 20)).toEqual([]);
  });
});
