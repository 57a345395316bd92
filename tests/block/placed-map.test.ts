import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import { placedMap, placedSize, placementOf } from '../../src/block/placed-map.js';
import type { SeamMap } from '../../src/block/seam-map.js';
import { placedPoint, unplacedPoint } from '../../src/geometry/placement.js';
import { distance, wrapAngle } from '../../src/geometry/point.js';
import { fromPoints, polylineLength, toPoints } from '../../src/geometry/polyline.js';
import { box, circle, drawing, mapOf } from './draw.js';

const block = mapOf([
  box(5, 3, 90, 60),
  [
    [5, 20],
    [95, 40],
  ],
  [
    [30, 3],
    [40, 63],
  ],
  [
    [60, 30],
    [80, 63],
  ],
  circle(75, 20, 8),
]);
const askew = fc.record({
  scale: fc.double({ min: 0.3, max: 4, noNaN: true }),
  turn: fc.double({ min: -360, max: 360, noNaN: true }),
});

describe('a placed map', () => {
  it('has every length larger by the factor, every area by its square, and the corner of its frame at 0, 0', () => {
    fc.assert(
      fc.property(askew, ({ scale, turn }) => {
        const map = placedMap(block, placementOf(block, scale, turn));
        const lengths = ({ seams }: SeamMap) => seams.map(({ points }) => polylineLength(points));
        lengths(map).forEach((length, i) => {
          expect(length).toBeCloseTo(scale * lengths(block)[i], 6);
        });
        map.patches.forEach(({ area }, i) => {
          expect(area).toBeCloseTo(scale ** 2 * block.patches[i].area, 5);
        });
        const { points } = map.outline!;
        const xs = toPoints(points).map(([x]) => x);
        // of a quarter turn the frame is the page, with its margins
        const [from, to] = turn % 90 === 0 ? [5 * scale, map.width - 5 * scale] : [0, map.width];
        if (turn % 180 === 0 || turn % 90 !== 0) {
          expect(Math.min(...xs)).toBeCloseTo(from, 6);
          expect(Math.max(...xs)).toBeCloseTo(to, 6);
        }
        expect(placedSize(block, scale, turn)).toEqual({ width: map.width, height: map.height });
      }),
      { examples: [[{ scale: 2, turn: 180 }]] },
    );
  });

  it('is the map of the drawing so placed, but for numbers and directions', () => {
    // a drawing of the placed lines, read anew, meets in the same places at the same angles
    fc.assert(
      fc.property(askew, ({ scale, turn }) => {
        const placement = placementOf(block, scale, turn);
        const map = placedMap(block, placement);
        const lines = [...block.seams.map(({ points }) => points), block.outline!.points];
        const again = buildSeamMap(
          drawing(lines.map((line) => toPoints(line).map((p) => placedPoint(p, placement)))),
        ).map;
        expect(again.junctions).toHaveLength(map.junctions.length);
        const off = map.junctions.map(({ at, arms }) => {
          const twin = again.junctions.find((one) => distance(one.at, at) < 0.01)!;
          return Math.max(
            ...arms.map(({ direction }, i) => {
              const near = twin.arms.map((arm) => Math.abs(wrapAngle(arm.direction - direction)));
              expect(arms.length).toBe(twin.arms.length);
              return i < 0 ? 0 : Math.min(...near);
            }),
          );
        });
        expect(Math.max(...off)).toBeLessThan(1e-3);
      }),
      { numRuns: 30 },
    );
  });

  it('keeps the order of arms by rising direction, and each arm on its seam', () => {
    fc.assert(
      fc.property(askew, ({ scale, turn }) => {
        const map = placedMap(block, placementOf(block, scale, turn));
        for (const [j, { at, arms }] of map.junctions.entries()) {
          const directions = arms.map(({ direction }) => direction);
          expect(directions).toEqual([...directions].sort((a, b) => a - b));
          for (const { seam, u } of arms) {
            const line = seam === 'outline' ? map.outline!.points : map.seams[seam - 1].points;
            const points = toPoints(line);
            let far = 0;
            const nearest = points.map((p, i) => {
              far += i ? distance(p, points[i - 1]) : 0;
              return { p, far };
            });
            const here = nearest.filter(({ p }) => distance(p, at) < 1e-6);
            expect(
              here.some((one) => Math.abs(one.far - u) < 1e-6),
              `junction ${j}`,
            ).toBe(true);
          }
        }
      }),
      { numRuns: 30 },
    );
  });

  it('turned by quarters lies on whole numbers where it did before', () => {
    const map = placedMap(block, placementOf(block, 1, 90));
    expect([map.width, map.height]).toEqual([block.height, block.width]);
    const points = toPoints(map.outline!.points).map(String);
    expect(points).toEqual(expect.arrayContaining(['3,5', '3,95', '63,5', '63,95']));
    expect(placedMap(block, placementOf(block, 1, -720))).toBe(block);
  });

  it('tells where a point came from', () => {
    fc.assert(
      fc.property(askew, fc.double({ min: -99, max: 99, noNaN: true }), ({ scale, turn }, x) => {
        const placement = placementOf(block, scale, turn);
        expect(distance(unplacedPoint(placedPoint([x, 7], placement), placement), [x, 7])).toBeLessThan(1e-9);
        const [a, b] = [placedPoint([x, 7], placement), placedPoint([x + 3, 11], placement)];
        expect(polylineLength(fromPoints([a, b]))).toBeCloseTo(5 * scale, 9);
      }),
    );
  });
});
