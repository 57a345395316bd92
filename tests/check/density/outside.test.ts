import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import KDBush from 'kdbush';
import { describe, expect, test } from 'vitest';
import { density } from '../../../src/check/density/density.js';
import { cellIndex, eachRow, type Field } from '../../../src/check/density/field.js';
import type { SewnStitches } from '../../../src/check/density/sewn-stitches.js';

/** Cloth of so many mm to the side, and dots to the mm on which it is painted. */
const SIZE = 30;
const DOTS = 40;

type Stitch = readonly [number, number, number, number];
const sewn = (stitches: readonly Stitch[], width: number): SewnStitches => ({
  ends: Float64Array.from(stitches.flat()),
  stops: [{ from: 0, to: stitches.length, width }],
});

/** Numbers in [0, 1) by a seed: Park and Miller's minimal standard (CACM 31, 1988). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}
const onGrid = (mm: number) => Math.round(10 * Math.min(SIZE - 2, Math.max(2, mm))) / 10;

/** Short stitches every way, a zigzag, and curves in three passes, all on the machine's grid. */
const WORKS: Readonly<Record<string, (random: () => number) => Stitch[]>> = {
  scattered: (random) =>
    Array.from({ length: 160 }, (): Stitch => {
      const [x, y, way, long] = [SIZE * random(), SIZE * random(), 6.3 * random(), 0.4 + 6 * random()];
      return [onGrid(x), onGrid(y), onGrid(x + long * Math.cos(way)), onGrid(y + long * Math.sin(way))];
    }),
  zigzag: (random) => {
    const points = Array.from(
      { length: 80 },
      (_, i) => [onGrid(3 + i * 0.3), onGrid(6 + 12 * random() + (i % 2) * 6)] as const,
    );
    return points.slice(1).map((to, i): Stitch => [...points[i], ...to]);
  },
  passes: (random) =>
    Array.from({ length: 24 }, () => {
      let [x, y, way] = [SIZE * random(), SIZE * random(), 6.3 * random()];
      return Array.from({ length: 6 }, () => {
        const from = [onGrid(x), onGrid(y)] as const;
        x += 0.9 * Math.cos(way);
        y += 0.9 * Math.sin(way);
        way += 0.4;
        const stitch: Stitch = [...from, onGrid(x), onGrid(y)];
        return [stitch, stitch, stitch];
      }).flat();
    }).flat(),
};
const cases = Object.entries(WORKS).flatMap(([name, work], i) =>
  [0.25, 0.4, 0.65].map((width) => ({ name, width, stitches: work(seeded(100 + i)) })),
);

/** Thread painted by an independent rasterizer, as a share of full ink at each dot. */
function painted(stitches: readonly Stitch[], width: number, look: string, split: boolean): Float64Array {
  const lines = stitches.map(([x0, y0, x1, y1]) => `M${x0} ${y0}L${x1} ${y1}`);
  const paths = (split ? lines : [lines.join('')]).map((d) => `<path d="${d}"/>`).join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SIZE} ${SIZE}"><g fill="none" stroke="#000" stroke-linecap="round" stroke-width="${width}" ${look}>${paths}</g></svg>`;
  const { pixels } = new Resvg(svg, { fitTo: { mode: 'width', value: SIZE * DOTS } }).render();
  return Float64Array.from({ length: pixels.length / 4 }, (_, i) => pixels[4 * i + 3] / 255);
}

/** The mean of what was painted over each mm2, row by row. */
function byMm(dots: Float64Array): number[] {
  const sums = new Array<number>(SIZE * SIZE).fill(0);
  dots.forEach((ink, i) => {
    const [row, column] = [Math.floor(i / (SIZE * DOTS)), i % (SIZE * DOTS)];
    sums[Math.floor(row / DOTS) * SIZE + Math.floor(column / DOTS)] += ink;
  });
  return sums.map((sum) => sum / DOTS ** 2);
}

const valueAt = (field: Field, column: number, row: number): number => {
  const at = cellIndex(field, column - field.left / field.cell, row - field.top / field.cell);
  return at < 0 ? 0 : field.counts[at] * field.unit;
};
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe('cover, against threads painted by resvg', () => {
  test.each(cases)('of $name stitches in thread of $width mm', ({ stitches, width }) => {
    const theirs = byMm(painted(stitches, width, '', false));
    const { cover, whole } = density(sewn(stitches, width));
    const ours = theirs.map((_, i) => valueAt(cover, i % SIZE, Math.floor(i / SIZE)));
    expect(Math.abs(sum(ours) / sum(theirs) - 1)).toBeLessThan(0.01);
    const errors = ours.map((value, i) => Math.abs(value - theirs[i])).filter((_, i) => theirs[i] > 0);
    const within = errors.filter((error) => error <= 0.03).length;
    expect(within / errors.length).toBeGreaterThanOrEqual(0.99);
    // what is told is what the cells hold
    expect(whole.cover.max).toBeCloseTo(Math.max(...ours), 9);
    expect(whole.cover.mean * whole.areaMm2).toBeCloseTo(sum(ours), 6);
  });
});

describe('layers, against threads painted by resvg at a known opacity', () => {
  test.each(cases)('of $name stitches in thread of $width mm', ({ stitches, width }) => {
    // n threads of ink that lets four fifths through leave 0.8^n of the cloth to be seen
    const few = stitches.slice(0, 120);
    const dots = painted(few, width, 'stroke-opacity="0.2" shape-rendering="crispEdges"', true);
    const layers = dots.map((ink) => Math.round(Math.log(1 - Math.min(ink, 0.9999)) / Math.log(0.8)));
    const theirs = byMm(layers);
    const { depth, whole } = density(sewn(few, width));
    const ours = theirs.map((_, i) => valueAt(depth, i % SIZE, Math.floor(i / SIZE)));
    expect(Math.abs(sum(ours) / sum(theirs) - 1)).toBeLessThan(0.02);
    expect(whole.layers.mean * whole.areaMm2).toBeCloseTo(sum(ours), 6);
  });
});

describe('holes, against an independent index (kdbush)', () => {
  test('are at every cell as many as lie within 1 mm of its middle', () => {
    for (const { stitches, width } of cases) {
      const index = new KDBush(stitches.length);
      for (const [, , x, y] of stitches) index.add(x, y);
      index.finish();
      const { holes } = density(sewn(stitches, width));
      const wrong: unknown[] = [];
      eachRow(holes, (row, column, from, to) => {
        for (let i = from; i < to; i++) {
          const x = holes.left + (column + i - from + 0.5) * holes.cell;
          const y = holes.top + (row + 0.5) * holes.cell;
          // a hole at 1 mm to the last digit may be counted or not
          const [least, most] = [0.999999, 1.000001].map((radius) => index.within(x, y, radius).length);
          if (holes.counts[i] < least || holes.counts[i] > most) wrong.push([x, y, holes.counts[i], least]);
        }
      });
      expect(wrong).toEqual([]);
    }
  });
});

describe('closed forms', () => {
  test('threads side by side at a spacing cover width by spacing of the cloth between', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 20 }).map((n) => n / 10),
        fc.constantFrom(0.25, 0.4, 0.65),
        (spacing, width) => {
          const rows = Array.from(
            { length: 40 },
            (_, i): Stitch => [2, 2 + i * spacing, 32, 2 + i * spacing],
          );
          const { cover } = density(sewn(rows, width));
          // where whole spacings fill whole mm, away from the ends of the threads
          const high = spacing * 10;
          const values = Array.from({ length: high }, (_, row) => valueAt(cover, 15, 4 + row));
          expect(Math.abs(sum(values) / high - Math.min(1, width / spacing))).toBeLessThan(0.03);
        },
      ),
    );
  });

  test('a satin bar is one layer deep where its threads touch, two where they lie twice as close', () => {
    for (const [spacing, layers] of [
      [0.4, 1],
      [0.2, 2],
    ]) {
      const bar = Array.from({ length: 100 }, (_, i): Stitch => [3 + i * spacing, 5, 3 + i * spacing, 15]);
      const { depth } = density(sewn(bar, 0.4));
      const inside = [6, 9, 12, 15].map((x) => valueAt(depth, x, 10));
      expect(Math.abs(sum(inside) / 4 - layers)).toBeLessThan(0.05 * layers);
    }
  });

  test('a disc of radial threads is n w / (2 pi r) layers deep at r from its middle', () => {
    const [count, width] = [60, 0.4];
    const rays = Array.from({ length: count }, (_, i): Stitch => {
      const way = (2 * Math.PI * i) / count;
      return [15, 15, 15 + 10 * Math.cos(way), 15 + 10 * Math.sin(way)];
    });
    const { depth } = density(sewn(rays, width));
    for (const r of [4, 6, 8]) {
      const around = Array.from({ length: 72 }, (_, i) => {
        const way = (2 * Math.PI * i) / 72;
        return valueAt(depth, Math.floor(15 + r * Math.cos(way)), Math.floor(15 + r * Math.sin(way)));
      });
      expect(Math.abs(sum(around) / 72 / ((count * width) / (2 * Math.PI * r)) - 1)).toBeLessThan(0.06);
    }
  });

  test('mean holes are piercings by the area sewn on, mean layers area of thread by the same', () => {
    for (const { stitches, width } of cases) {
      const { whole } = density(sewn(stitches, width));
      const thread = sum(
        stitches.map(([x0, y0, x1, y1]) => Math.hypot(x1 - x0, y1 - y0) * width + (Math.PI * width ** 2) / 4),
      );
      expect(Math.abs((whole.holesPerMm2.mean * whole.areaMm2) / stitches.length - 1)).toBeLessThan(0.02);
      expect(Math.abs((whole.layers.mean * whole.areaMm2) / thread - 1)).toBeLessThan(0.02);
    }
  });
});
