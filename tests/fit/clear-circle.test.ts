import fc from 'fast-check';
import polylabel from 'polylabel';
import { describe, expect, test } from 'vitest';
import { clearOfArea, clearOfLines, largestClearCircle } from '../../src/fit/clear-circle.js';
import { fromPoints } from '../../src/geometry/polyline.js';

type XY = readonly [number, number];

const closed = (points: readonly XY[]) => fromPoints([...points, points[0]]);
const patchOf = (boundary: readonly XY[], ...holes: XY[][]) => ({
  boundary: closed(boundary),
  holes: holes.map(closed),
});
const rectangle = (x: number, y: number, width: number, height: number): XY[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];
/** The radius that polylabel finds, an independent library: https://www.npmjs.com/package/polylabel */
const radiusElsewhere = (rings: readonly (readonly XY[])[], precision: number): number =>
  polylabel(
    rings.map((ring) => [...ring, ring[0]].map(([x, y]) => [x, y])),
    precision,
  ).distance;

/** A star-shaped polygon, mostly not convex, of up to 20 corners. */
const polygon = fc
  .array(
    fc.tuple(fc.double({ min: 8, max: 60, noNaN: true }), fc.double({ min: 0.2, max: 1, noNaN: true })),
    {
      minLength: 3,
      maxLength: 20,
    },
  )
  .map((corners): XY[] => {
    const whole = corners.reduce((sum, [, share]) => sum + share, 0);
    let turned = 0;
    return corners.map(([radius, share]): XY => {
      turned += (2 * Math.PI * share) / whole;
      return [100 + radius * Math.cos(turned), 80 + radius * Math.sin(turned)];
    });
  });

describe('the largest clear circle', () => {
  test('of a bare patch is as large as another library finds it', () => {
    fc.assert(
      fc.property(polygon, fc.constantFrom(0.01, 0.05, 0.5), (ring, precision) => {
        const own = largestClearCircle(patchOf(ring), [], { precision });
        expect(Math.abs((own?.radius ?? 0) - radiusElsewhere([ring], precision))).toBeLessThanOrEqual(
          precision + 1e-9,
        );
      }),
      { numRuns: 300 },
    );
  });

  test('stays clear of holes in the cloth', () => {
    fc.assert(
      fc.property(
        polygon,
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.double({ min: 0.5, max: 1.5, noNaN: true }),
        (ring, turn, size) => {
          const hole = [0, 1, 2].map((k): XY => {
            const angle = turn + (k * 2 * Math.PI) / 3;
            return [100 + size * Math.cos(angle), 80 + size * Math.sin(angle)];
          });
          const own = largestClearCircle(patchOf(ring, hole), [], { precision: 0.05 });
          const other = radiusElsewhere([ring, hole], 0.05);
          expect(Math.abs((own?.radius ?? 0) - other)).toBeLessThanOrEqual(0.05 + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });

  test('beside an area that is kept clear is the one beside a hole', () => {
    const [ring, kept] = [rectangle(0, 0, 100, 60), rectangle(30, 10, 25, 25)];
    const area = { rings: [closed(kept)], rule: 'nonzero' } as const;
    const own = largestClearCircle(patchOf(ring), [clearOfArea(area, 0)], { precision: 0.01 })!;
    expect(Math.abs(own.radius - radiusElsewhere([ring, kept], 0.01))).toBeLessThanOrEqual(0.01);
  });

  test('between two threads fills the middle, less the margin on both sides', () => {
    const thread = (y: number) => ({ xy: Float64Array.of(0, y, 100, y), start: Int32Array.of(0, 2) });
    const obstacle = clearOfLines([thread(20), thread(50)], 1.5);
    const circle = largestClearCircle(patchOf(rectangle(0, 0, 100, 60)), [obstacle], { precision: 0.01 })!;
    expect(circle.radius).toBeGreaterThan(13.49);
    expect(circle.radius).toBeLessThanOrEqual(13.5);
    expect(circle.y).toBeCloseTo(35, 1);
  });

  test('in a long patch lies in the middle of its length, where nothing asks for another place', () => {
    const circle = largestClearCircle(patchOf(rectangle(10, 10, 160, 20)), [], { forMiddle: 0.03 })!;
    expect(circle.x).toBeCloseTo(90, 0);
    expect(circle.y).toBeCloseTo(20, 0);
    expect(circle.radius).toBeGreaterThanOrEqual(9.7);
  });

  test('of a patch that thread covers is none', () => {
    const lines = Array.from({ length: 11 }, (_, i) => i);
    const xy = Float64Array.from(lines.flatMap((y) => [0, y, 10, y]));
    const start = Int32Array.from([...lines.map((_, i) => 2 * i), 2 * lines.length]);
    expect(
      largestClearCircle(patchOf(rectangle(0, 0, 10, 10)), [clearOfLines([{ xy, start }], 0.6)]),
    ).toBeNull();
  });

  test('keeps its size and its place in the patch when the patch is turned', () => {
    fc.assert(
      fc.property(polygon, fc.double({ min: 0, max: 6, noNaN: true }), (ring, angle) => {
        const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
        const turned = ring.map(([x, y]): XY => [x * cos - y * sin, x * sin + y * cos]);
        const radius = (of: readonly XY[]) =>
          largestClearCircle(patchOf(of), [], { precision: 0.02 })?.radius ?? 0;
        expect(Math.abs(radius(ring) - radius(turned))).toBeLessThanOrEqual(0.02);
      }),
      { numRuns: 60 },
    );
  });
});
