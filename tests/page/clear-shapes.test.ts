import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  freeName,
  withClearShape,
  withCornerAt,
  withCornerBehind,
  withoutCorner,
  withShapeMoved,
} from '../../page/state/clear-shapes.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { type Placement, placedPoint } from '../../src/geometry/placement.js';

const dressing = { treatments: [], threads: [] } as unknown as Dressing;
const asItWas: Placement = { scale: 1, turn: 0, shift: [0, 0] };
const triangle = [
  [10, 10],
  [40, 12],
  [22, 50],
] as const;
const cornersOf = ({ keepClear }: Dressing, k = 0) => keepClear![k].polygon!;
const place = fc.tuple(
  fc.double({ min: -50, max: 150, noNaN: true }),
  fc.double({ min: -50, max: 150, noNaN: true }),
);

describe('a shape that is kept clear', () => {
  it('is kept on the block as drawn, however the block lies on the table', () => {
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 3, maxLength: 8 }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        fc.integer({ min: -180, max: 180 }),
        place,
        (corners, scale, turn, shift) => {
          const placement: Placement = { scale, turn, shift };
          const kept = cornersOf(withClearShape(dressing, corners, placement));
          // a dressing tells places to a tenth of a millimeter, on the block as drawn
          const off = kept.map((at, i) => {
            const [x, y] = placedPoint([at[0], at[1]], placement);
            return Math.hypot(x - corners[i][0], y - corners[i][1]);
          });
          expect(Math.max(...off)).toBeLessThanOrEqual(0.0708 * scale);
        },
      ),
    );
  });

  it('has three corners at least: fewer make none, and the last but two are taken off with it', () => {
    expect(withClearShape(dressing, triangle.slice(0, 2), asItWas)).toBe(dressing);
    const one = withClearShape(dressing, triangle, asItWas);
    const four = withCornerBehind(one, 0, 2, [5, 30], asItWas);
    expect(cornersOf(four)).toEqual([...triangle, [5, 30]]);
    expect(cornersOf(withoutCorner(four, 0, 3))).toEqual(triangle);
    expect(withoutCorner(one, 0, 1).keepClear).toEqual([]);
  });

  it('is moved as a whole by the same way for every corner, and corner by corner', () => {
    const one = withClearShape(dressing, triangle, asItWas);
    expect(cornersOf(withCornerAt(one, 0, 1, [44.04, 8], asItWas))).toEqual([
      triangle[0],
      [44, 8],
      triangle[2],
    ]);
    fc.assert(
      fc.property(place, place, (from, to) => {
        const moved = cornersOf(withShapeMoved(one, 0, from, to, asItWas));
        const ways = moved.map(([x, y], i) => [x - triangle[i][0], y - triangle[i][1]]);
        for (const [dx, dy] of ways) {
          expect(dx).toBeCloseTo(ways[0][0], 9);
          expect(dy).toBeCloseTo(ways[0][1], 9);
        }
        expect(Math.abs(ways[0][0] - (to[0] - from[0]))).toBeLessThanOrEqual(0.0501);
      }),
    );
  });

  it('has a name of its own, whatever was taken off before', () => {
    let all = dressing;
    for (let n = 0; n < 3; n++) all = withClearShape(all, triangle, asItWas);
    const without = { ...all, keepClear: all.keepClear!.filter((_, k) => k !== 0) };
    const names = [...without.keepClear.map(({ name }) => name), freeName(without.keepClear)];
    expect(new Set(names).size).toBe(3);
  });
});
