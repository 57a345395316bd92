import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Plate, placesOnLines, plateRoom, roomForAll } from '../../src/draw/plate-room.js';
import { type Box, boxAt } from '../../src/geometry/box.js';

const coordinate = fc.integer({ min: 0, max: 400 }).map((n) => n / 10);
const point = fc.tuple(coordinate, coordinate);
const line = fc
  .array(point, { minLength: 2, maxLength: 6 })
  .map((points) => Float64Array.from(points.flat()));
const size = fc.integer({ min: 10, max: 80 }).map((n) => n / 10);
const things = fc.array(
  fc.record({ lines: fc.array(line, { minLength: 1, maxLength: 3 }), width: size, height: size }),
  { minLength: 1, maxLength: 40 },
);
type Thing = { readonly lines: Float64Array[]; readonly width: number; readonly height: number };
const plate = ({ lines, width, height }: Thing): Plate => ({ places: placesOnLines(lines), width, height });
const plates = (all: readonly Thing[]) => all.map(plate);
const again = (times: number): Thing[] =>
  Array.from({ length: times }, () => ({
    lines: [Float64Array.of(10, 10, 12, 10, 14, 10)],
    width: 4,
    height: 3,
  }));

/** Room enough. */
const wide = { left: -200, top: -200, right: 240, bottom: 240 };
const CLEAR = 0.5;
const meet = (a: Box, b: Box, clear: number) =>
  a.left < b.right + clear &&
  b.left < a.right + clear &&
  a.top < b.bottom + clear &&
  b.top < a.bottom + clear;

describe('plates of many lines', () => {
  test('do not cover one another, nor what lay there before', () => {
    fc.assert(
      fc.property(things, fc.array(point, { maxLength: 8 }), (all, taken) => {
        const before = taken.map((at) => boxAt(at, 5, 2));
        const spots = plateRoom(plates(all), { clear: CLEAR, within: wide, taken: before });
        const boxes = spots.flatMap((spot, i) => (spot ? [boxAt(spot.at, all[i].width, all[i].height)] : []));
        const over = boxes.flatMap((box, i) =>
          [...before, ...boxes.slice(0, i)].filter((other) => meet(box, other, CLEAR - 1e-9)),
        );
        expect(over).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('lie on their own lines, or are led to a place on them', () => {
    fc.assert(
      fc.property(things, (all) => {
        const stray = plateRoom(plates(all), { clear: CLEAR, within: wide }).filter((spot, i) => {
          const { lines, width, height } = all[i];
          const points = lines.flatMap((xy) =>
            Array.from({ length: xy.length / 2 }, (_, k) => [xy[2 * k], xy[2 * k + 1]]),
          );
          if (!spot) return false;
          const { at, on } = spot;
          const isOwn = points.some(([x, y]) => x === on[0] && y === on[1]);
          const far = Math.hypot((at[0] - on[0]) / (width + CLEAR), (at[1] - on[1]) / (height + CLEAR));
          return !isOwn || far > 4.001;
        });
        expect(stray).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('of a line sewn ten times over lie in as many places, the first in its middle, none far', () => {
    const spots = plateRoom(plates(again(10)), { clear: CLEAR, within: wide }).map((spot) => spot!);
    expect(spots[0]).toEqual({ at: [12, 10], on: [12, 10] });
    expect(new Set(spots.map(({ at }) => String(at))).size).toBe(10);
    expect(Math.max(...spots.map(({ at, on }) => Math.hypot(at[0] - on[0], at[1] - on[1])))).toBeLessThan(12);
  });

  test('are moved aside only when those that have room on their lines lie there, and not onto what is to be avoided', () => {
    const here = { lines: [Float64Array.of(10, 10, 10, 10)], width: 4, height: 3 };
    const right = { lines: [Float64Array.of(12, 10, 12, 10)], width: 4, height: 3 };
    const far = { lines: [Float64Array.of(14.6, 10, 14.6, 10)], width: 4, height: 3 };
    const avoided = [boxAt([10, 6], 30, 4)];
    const [first, second, third] = plateRoom(plates([here, right, far]), {
      clear: CLEAR,
      within: wide,
      avoided,
    });
    expect([first, third].map((spot) => spot!.at)).toEqual([
      [10, 10],
      [14.6, 10],
    ]);
    expect(meet(boxAt(second!.at, 4, 3), avoided[0], 0)).toBe(false);
  });

  test('stay whole within the cloth, and are left out where it is full', () => {
    const cloth = { left: 0, top: 0, right: 20, bottom: 20 };
    const spots = plateRoom(plates(again(60)), { clear: CLEAR, within: cloth });
    const kept = spots.flatMap((spot) => (spot ? [boxAt(spot.at, 4, 3)] : []));
    expect(kept.length).toBeGreaterThan(8);
    expect(kept.length).toBeLessThan(60);
    expect(kept.filter(({ left, top }) => Math.min(left, top) < 0)).toEqual([]);
    expect(kept.filter(({ right, bottom }) => Math.max(right, bottom) > 20)).toEqual([]);
  });

  test('are all kept where the picture may grow round its cloth', () => {
    const cloth = { left: 0, top: 0, right: 20, bottom: 20 };
    const { spots, frame } = roomForAll(plates(again(200)), { clear: CLEAR, within: cloth }, 5);
    expect(spots).not.toContain(null);
    expect(frame.right - frame.left).toBeGreaterThan(20);
    expect(roomForAll(plates(again(2)), { clear: CLEAR, within: cloth }, 5).frame).toEqual(cloth);
  });
});
