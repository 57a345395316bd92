import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Block } from '../src/block/block.js';
import { buildSeamMap } from '../src/block/build-seam-map.js';
import type { LineDrawing } from '../src/block/drawn-line.js';
import { readSvgBlock } from '../src/block/read-drawing.js';
import { writeDesign } from '../src/design/write-design.js';
import { type DressedLine, dress } from '../src/dress.js';
import type { BlockSource, Dressing, Manner } from '../src/formats/dressing.js';
import { polylineLength } from '../src/geometry/polyline.js';
import { defaultDressing } from '../src/plan.js';
import { cutBlock } from './bench/many-seams.js';
import { butting } from './fit/block-of-lines.js';
import { countyBlock } from './fixtures/counties.js';
import { builtIn } from './stitches/dictionary.js';

const source: BlockSource = { file: 'block.svg', stops: null, snap: 0.3, through: [] };

const blockOf = (drawing: LineDrawing): Block => {
  const { map, findings } = buildSeamMap(drawing);
  return { name: 'block', map, existing: null, stops: [], origin: [0, 0], findings };
};
const cut = (seed: number, size = 180, patch = 70): Block => ({
  name: 'cut',
  map: buildSeamMap(cutBlock(size, patch, seed)).map,
  existing: null,
  stops: [],
  origin: [0, 0],
  findings: [],
});
const panel = () =>
  readSvgBlock(
    readFileSync(new URL('../gallery/demo/panel.svg', import.meta.url), 'utf8'),
    'panel.svg',
    source,
  );

const planned = (block: Block, more: Partial<Dressing> = {}): Dressing => ({
  ...defaultDressing(block.map, { source, dictionary: builtIn }),
  ...more,
});

const isSewn = ({ layers }: DressedLine) => layers.some(({ runs }) => runs.start.length > 1);

describe('dressing a whole block', () => {
  // County borders of three states, from us-atlas: line networks nobody here drew.
  test.each(['19', '08', '50'])(
    'every seam of the counties of state %s is dressed or named with the reason',
    (state) => {
      const block = blockOf(countyBlock(state));
      const { lines, findings, design } = dress(block, planned(block), builtIn);
      expect(block.map.seams.length).toBeGreaterThan(10);
      const sewn = new Set(lines.filter(isSewn).map((row) => row.fit.seam));
      const named = new Set(findings.map((finding) => finding.seam));
      for (const seam of block.map.seams) expect(sewn.has(seam.id) || named.has(seam.id)).toBe(true);
      expect(sewn.size).toBeGreaterThan(block.map.seams.length / 2);
      for (const stop of design.stops)
        for (const value of stop.runs.xy) expect(Number.isFinite(value)).toBe(true);
    },
  );

  test('on random blocks every seam is dressed, in stretches of whole or half repeats near the size asked', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (seed) => {
        const block = cut(seed);
        const { lines, findings } = dress(block, planned(block), builtIn);
        const named = new Set(findings.map((finding) => finding.seam));
        expect(lines).toHaveLength(block.map.seams.length);
        for (const { fit } of lines) {
          if (fit.stretches.length === 0) expect(named.has(fit.seam)).toBe(true);
          for (const { from, to, repeats } of fit.stretches) {
            expect((2 * repeats) % 1).toBe(0);
            const stretch = (to - from) / repeats / (fit.wanted * fit.scale!);
            const margin = findings.some(
              (finding) => finding.code === 'margins' && finding.seam === fit.seam,
            );
            if (!margin) expect(stretch).toBeGreaterThan(0.79);
            expect(stretch).toBeLessThan(1.26);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test('a treatment is sewn before the one it tucks under', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (seed) => {
        const block = cut(seed);
        const { lines, findings } = dress(block, planned(block), builtIn);
        const sewn = new Map(lines.map((row, i) => [row.fit.seam, i]));
        if (findings.some((finding) => finding.code === 'ring-of-tucks')) return;
        for (const { arms, through } of block.map.junctions) {
          if (through === null) continue;
          for (const { seam } of arms) {
            if (seam === 'outline' || seam === through) continue;
            expect(sewn.get(seam)!).toBeLessThan(sewn.get(through)!);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test('needle points of a treatment stay within its reach of its seam, a thread aside', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom<Manner>('tuck', 'short', 'bevel'),
        (seed, ends) => {
          const block = cut(seed, 150, 60);
          const { lines } = dress(block, planned(block, { ends, outline: 'free' }), builtIn);
          for (const { fit, layers } of lines.filter(isSewn)) {
            const { runs } = layers[0];
            const { points } = block.map.seams[(fit.seam as number) - 1];
            const unit = builtIn.stitches.get(fit.stitch)!.build({});
            const reach = Math.max(unit.reach.left, unit.reach.right);
            for (let i = 0; i < runs.xy.length; i += 2) {
              expect(distanceTo(points, runs.xy[i], runs.xy[i + 1])).toBeLessThanOrEqual(1.2 * reach + 0.6);
            }
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  test('with short ends, treatments of different seams do not touch', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (seed) => {
        const block = cut(seed, 150, 70);
        // one narrow stitch, so that no seam runs beside another closer than both reach
        const dressing = {
          ...defaultDressing(block.map, {
            source,
            dictionary: builtIn,
            stitch: 'feather',
            width: 5,
            repeat: 5,
          }),
          ends: 'short' as const,
          outline: 'free' as const,
        };
        const { lines } = dress(block, dressing, builtIn);
        for (const { arms, at } of block.map.junctions) {
          const here = lines.filter((row) => arms.some((arm) => arm.seam === row.fit.seam));
          const near = here.map((row) => pointsNear(row.layers[0].runs.xy, at, 12));
          for (let a = 0; a < near.length; a++) {
            for (let b = a + 1; b < near.length; b++)
              expect(leastDistance(near[a], near[b])).toBeGreaterThan(0.35);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test('a seam of which nothing is left is named with the reason, whatever else is said of it', () => {
    for (const length of [4, 6, 8, 10, 12, 14]) {
      for (const ends of ['tuck', 'short', 'bevel'] as const) {
        const block = { ...cut(1), map: butting(0.5, length) };
        const plan = defaultDressing(block.map, { source, dictionary: builtIn, stitch: 'lazy-daisy', ends });
        const { lines, findings } = dress(block, plan, builtIn);
        const reasons = findings.filter(({ code }) =>
          ['too-short', 'tight-bend', 'nothing-left'].includes(code),
        );
        for (const { fit, layers } of lines) {
          if (!layers.some(({ runs }) => runs.start.length > 1))
            expect(reasons.map(({ seam }) => seam)).toContain(fit.seam);
        }
      }
    }
  });

  test('a misspelled stitch or measure in a dressing is answered with the nearest name', () => {
    const block = cut(2);
    const plan = planned(block);
    const rowed = (row: Partial<(typeof plan.treatments)[number]['rows'][number]>) => ({
      ...plan,
      treatments: plan.treatments.map((treatment) => ({
        ...treatment,
        rows: treatment.rows.map((own) => ({ ...own, ...row })),
      })),
    });
    expect(() => dress(block, rowed({ stitch: 'fether' }), builtIn)).toThrow('did you mean "feather"?');
    const widht = rowed({ stitch: 'feather', parameters: { widht: 8 } });
    expect(() => dress(block, widht, builtIn)).toThrow('did you mean "width"?');
  });

  test('the same block and dressing give the same bytes', async () => {
    const [one, other] = [await panel(), await panel()];
    const bytes = (block: Block) => writeDesign(dress(block, planned(block), builtIn).design);
    expect(bytes(one)).toEqual(bytes(other));
  });

  test('a block twice the size gets about twice the repeats at the same size, not larger stitches', async () => {
    const small = await panel();
    const text = readFileSync(new URL('../gallery/demo/panel.svg', import.meta.url), 'utf8');
    const large = await readSvgBlock(
      text.replace('width="130mm"', 'width="260mm"').replace('height="180mm"', 'height="360mm"'),
      'panel.svg',
      source,
    );
    const count = (block: Block) => {
      const plan = defaultDressing(block.map, { source, dictionary: builtIn, stitch: 'feather' });
      return dress(block, plan, builtIn).lines.map(({ fit }) => ({
        repeats: fit.stretches.reduce((sum, stretch) => sum + stretch.repeats, 0),
        length: fit.stretches.reduce((sum, stretch) => sum + stretch.to - stretch.from, 0),
      }));
    };
    const sum = (fits: ReturnType<typeof count>) => fits.reduce((a, { repeats }) => a + repeats, 0);
    expect(sum(count(large)) / sum(count(small))).toBeGreaterThan(1.9);
    expect(sum(count(large)) / sum(count(small))).toBeLessThan(2.2);
    for (const { repeats, length } of count(large)) expect(length / repeats / 8).toBeGreaterThan(0.8);
    // a dressing saved for the small block finds its seams on the large one
    const { lines, findings } = dress(large, planned(small), builtIn);
    expect(findings.filter(({ code }) => code === 'lost-treatment')).toEqual([]);
    expect(lines.map(({ fit }) => fit.seam).sort()).toEqual(large.map.seams.map(({ id }) => id).sort());
  });

  test('a treatment finds its seam again on a redrawn block, and a lost one is named', async () => {
    const block = await panel();
    const plan = planned(block);
    const edge = { id: 'outline', points: block.map.outline!.points, closed: true };
    const drawn = [...block.map.seams.slice(1), edge].map(({ id, points, closed }) => ({
      points: points.map((value) => value + 0.8),
      closed,
      fill: null,
      where: `seam ${id}`,
    }));
    const redrawn = blockOf({ width: 140, height: 190, origin: [0, 0], lines: drawn });
    const { lines, findings } = dress(redrawn, plan, builtIn);
    expect(lines).toHaveLength(block.map.seams.length - 1);
    expect(findings.filter((finding) => finding.code === 'lost-treatment')).toHaveLength(1);
    for (const { fit, treatment } of lines) {
      const found = redrawn.map.seams[(fit.seam as number) - 1];
      const meant = block.map.seams[(plan.treatments[treatment].seam.id as number) - 1];
      expect(Math.abs(polylineLength(found.points) - polylineLength(meant.points))).toBeLessThan(3);
    }
  });
});

describe('a mirrored block', () => {
  test('gets the same counts, gaps and sizes on every seam', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), (seed) => {
        const map = buildSeamMap(cutBlock(160, 70, seed)).map;
        const lines = (flip: boolean) =>
          map.seams
            .map((seam) => seam.points)
            .concat(map.outline ? [map.outline.points] : [])
            .map((points, i) => ({
              points: points.map((value, k) => (flip && k % 2 === 0 ? 160 - value : value)),
              closed: i === map.seams.length,
              fill: null,
              where: `line ${i}`,
            }));
        const fitted = (flip: boolean) => {
          const block = blockOf({ width: 160, height: 160, origin: [0, 0], lines: lines(flip) });
          const plan = defaultDressing(block.map, { source, dictionary: builtIn, stitch: 'feather' });
          return dress(block, plan, builtIn)
            .lines.map(({ fit }) =>
              [
                fit.stretches.reduce((sum, stretch) => sum + stretch.repeats, 0),
                (fit.endGap[0] + fit.endGap[1]).toFixed(2),
                fit.scale!.toFixed(2),
              ].join(' '),
            )
            .sort();
        };
        expect(fitted(true)).toEqual(fitted(false));
      }),
      { numRuns: 40 },
    );
  });
});

function distanceTo(line: Float64Array, x: number, y: number): number {
  let least = Infinity;
  for (let k = 0; k + 3 < line.length; k += 2) {
    const [dx, dy] = [line[k + 2] - line[k], line[k + 3] - line[k + 1]];
    const t = Math.min(1, Math.max(0, ((x - line[k]) * dx + (y - line[k + 1]) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(line[k] + t * dx - x, line[k + 1] + t * dy - y));
  }
  return least;
}

function pointsNear(xy: Float64Array, [x, y]: readonly [number, number], around: number): [number, number][] {
  const found: [number, number][] = [];
  for (let i = 0; i < xy.length; i += 2) {
    if (Math.hypot(xy[i] - x, xy[i + 1] - y) < around) found.push([xy[i], xy[i + 1]]);
  }
  return found;
}

function leastDistance(a: readonly [number, number][], b: readonly [number, number][]): number {
  let least = Infinity;
  for (const [x, y] of a) for (const [p, q] of b) least = Math.min(least, Math.hypot(x - p, y - q));
  return least;
}
