import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { density } from '../../../src/check/density/density.js';
import { mostOf } from '../../../src/check/density/field.js';
import type { SewnStitches } from '../../../src/check/density/sewn-stitches.js';

type XY = readonly [number, number];

/** Stops of stitches from point to point, in thread of one width. */
function sewn(lines: readonly (readonly XY[])[], width = 0.4): SewnStitches {
  const ends: number[] = [];
  const stops = lines.map((line) => {
    const from = ends.length / 4;
    ends.push(...line.slice(1).flatMap((to, i) => [...line[i], ...to]));
    return { from, to: ends.length / 4, width };
  });
  return { ends: Float64Array.from(ends), stops };
}

const steps = fc.integer({ min: 0, max: 120 }).map((n) => n / 10);
const place = fc.tuple(steps, steps);
const stop = fc.array(place, { minLength: 2, maxLength: 6 });
const work = fc.array(stop, { minLength: 1, maxLength: 3 });
const widths = fc.constantFrom(0.25, 0.4, 0.65);

/** How far a point is from the nearest place of a segment (Schneider and Eberly, Geometric Tools, section 6.1, from memory). */
function away([x, y]: XY, [x0, y0, x1, y1]: readonly number[]): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const t = Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - x0 - t * dx, y - y0 - t * dy);
}

/** The same measures, cell by cell and stitch by stitch. */
function byHand({ ends, stops }: SewnStitches) {
  const stitches = Array.from({ length: ends.length / 4 }, (_, i) => [...ends.subarray(4 * i, 4 * i + 4)]);
  const width = stops[0].width;
  const centers = (wide: number, high = wide): XY[] => {
    const across = Math.round(16 / wide);
    return Array.from(
      { length: across * Math.round(16 / high) },
      (_, i) => [((i % across) + 0.5) * wide - 2, (Math.floor(i / across) + 0.5) * high - 2] as const,
    );
  };
  const layersAt = ([x, y]: XY) =>
    stitches.filter(
      (one) =>
        Math.min(one[1], one[3]) - width < y &&
        y < Math.max(one[1], one[3]) + width &&
        away([x, y], one) <= width / 2,
    ).length;
  const sewnOn = centers(0.25).filter((p) => stitches.some((one) => away(p, one) <= 1));
  const holes = sewnOn.map(
    (p) => stitches.filter(([, , x, y]) => Math.hypot(p[0] - x, p[1] - y) <= 1).length,
  );
  const layers = centers(1 / 32, 1 / 20).map(layersAt);
  const areaMm2 = sewnOn.length / 16;
  return {
    areaMm2,
    mostHoles: Math.max(...holes) / Math.PI,
    meanHoles: holes.reduce((a, b) => a + b, 0) / Math.PI / holes.length,
    mostLayers: layers.reduce((a, b) => Math.max(a, b)),
    meanLayers: layers.reduce((a, b) => a + b) / 640 / areaMm2,
    cover: layers.filter((count) => count > 0).length / 640 / areaMm2,
  };
}

describe('density of stitches', () => {
  test('is what is counted cell by cell and stitch by stitch', () => {
    fc.assert(
      fc.property(work, widths, (lines, width) => {
        const stitches = sewn(lines, width);
        const { whole } = density(stitches);
        const counted = byHand(stitches);
        expect(whole.areaMm2).toBeCloseTo(counted.areaMm2, 6);
        expect(whole.holesPerMm2.max).toBeCloseTo(counted.mostHoles, 6);
        expect(whole.holesPerMm2.mean).toBeCloseTo(counted.meanHoles, 6);
        expect(whole.layers.max).toBe(counted.mostLayers);
        expect(whole.layers.mean).toBeCloseTo(counted.meanLayers, 6);
        expect(whole.cover.mean).toBeCloseTo(counted.cover, 6);
      }),
      { numRuns: 15 },
    );
  });

  test('of a single stitch follows from the area of its capsule, pi r2 + 2 r l', () => {
    const { whole } = density(
      sewn([
        [
          [0, 0.03],
          [6, 3.13],
        ],
      ]),
    );
    const length = Math.hypot(6, 3.1);
    const capsule = (r: number) => Math.PI * r * r + 2 * r * length;
    expect(whole.areaMm2 / capsule(1)).toBeCloseTo(1, 1.5);
    expect((whole.layers.mean * whole.areaMm2) / capsule(0.2)).toBeCloseTo(1, 1.5);
    expect(whole.layers.max).toBe(1);
    // one piercing, whose circle of 1 mm lies inside what is sewn on
    expect(whole.holesPerMm2.mean * whole.areaMm2).toBeCloseTo(1, 1);
  });

  test('is told of thread that lies a hundred deep, and of stops that are sewn over one another', () => {
    const there = Array.from({ length: 101 }, (_, i): XY => [i % 2 ? 5 : 2, 4.5]);
    const { whole, stops, depth } = density(sewn([there, there, there]));
    expect(whole.layers.max).toBe(300);
    expect(stops.map(({ alone }) => alone.layers.max)).toEqual([100, 100, 100]);
    expect(stops.map(({ soFar }) => soFar.layers.max)).toEqual([100, 200, 300]);
    // a mm2 that the thread goes across has 0.4 mm of it, 300 times
    expect(mostOf(depth)).toBeCloseTo(120, 6);
  });

  test('has as many holes on the average as piercings on its area', () => {
    fc.assert(
      fc.property(work, (lines) => {
        const { whole } = density(sewn(lines));
        const piercings = lines.reduce((sum, line) => sum + line.length - 1, 0);
        expect(Math.abs((whole.holesPerMm2.mean * whole.areaMm2) / piercings - 1)).toBeLessThan(0.1);
      }),
    );
  });

  test('counts the stops one upon another: the last so far is the whole, and each alone as if it were the only one', () => {
    fc.assert(
      fc.property(work, (lines) => {
        const all = density(sewn(lines));
        expect(all.stops[all.stops.length - 1].soFar).toEqual(all.whole);
        lines.forEach((line, i) => {
          expect(all.stops[i].alone).toEqual(density(sewn([line])).whole);
          expect(all.stops[i].soFar).toEqual(density(sewn(lines.slice(0, i + 1))).whole);
        });
      }),
      { numRuns: 30 },
    );
  });

  test('does not depend on where work lies on the cloth, by whole mm', () => {
    fc.assert(
      fc.property(
        work,
        fc.integer({ min: -300, max: 300 }),
        fc.integer({ min: -300, max: 300 }),
        (lines, x, y) => {
          const moved = lines.map((line) => line.map(([px, py]): XY => [px + x, py + y]));
          const near = (a: number, b: number) => Math.abs(a - b) < 0.02 * Math.abs(a) + 1e-9;
          const [here, there] = [density(sewn(lines)).whole, density(sewn(moved)).whole];
          expect(near(here.areaMm2, there.areaMm2)).toBe(true);
          expect(near(here.layers.mean, there.layers.mean)).toBe(true);
        },
      ),
    );
  });

  test('is measured tile by tile on a large piece as on a small one', () => {
    const line: XY[] = Array.from({ length: 40 }, (_, i) => [i % 2 ? 8 : 2, i * 0.4]);
    const far: XY[] = [
      [900, 900],
      [902, 900],
    ];
    const alone = density(sewn([line])).whole;
    const large = density(sewn([line.map(([x, y]): XY => [x, y]), far]));
    expect(large.stops[0].alone).toEqual(alone);
    const across: XY[] = line.map(([x, y]) => [x + 100, y * 30]);
    const split = density(sewn([across, far])).stops[0].alone;
    expect(split).toEqual(density(sewn([across])).whole);
  });
});
