import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Block } from '../src/block/block.js';
import { buildSeamMap } from '../src/block/build-seam-map.js';
import { placementOf } from '../src/block/placed-map.js';
import { readStitchBlock } from '../src/block/read-stitch-file.js';
import type { SeamMap } from '../src/block/seam-map.js';
import { writeDesign } from '../src/design/write-design.js';
import { type Dressed, dress } from '../src/dress.js';
import type { BlockSource, Dressing } from '../src/formats/dressing.js';
import { readDst } from '../src/formats/dst-read.js';
import { stopsOf } from '../src/formats/stops.js';
import { placedPoint } from '../src/geometry/placement.js';
import { distance, type Point } from '../src/geometry/point.js';
import { toPoints } from '../src/geometry/polyline.js';
import { defaultDressing } from '../src/plan.js';
import { cutBlock } from './bench/many-seams.js';
import { PANEL_STOPS, piecedPanel, SEAM_STOPS } from './fixtures/pieced-panel.js';
import { builtIn } from './stitches/dictionary.js';

const source: BlockSource = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
const blockOf = (map: SeamMap): Block => ({
  name: 'cut',
  map,
  existing: null,
  stops: [],
  origin: [0, 0],
  findings: [],
});
const cut = (seed: number): Block => blockOf(buildSeamMap(cutBlock(180, 70, seed)).map);
const placed = (dressing: Dressing, how: Partial<BlockSource>): Dressing => ({
  ...dressing,
  block: { ...dressing.block, ...how },
});

const needlePoints = ({ design }: Dressed): Point[][] => design.stops.map(({ runs }) => toPoints(runs.xy));
/** The furthest that any needle point is from where it should be; Infinity where there are others than there should be. */
function furthest(is: readonly Point[][], should: readonly Point[][]): number {
  const counts = (stops: readonly Point[][]) => stops.map((stop) => stop.length).join();
  if (counts(is) !== counts(should)) return Number.POSITIVE_INFINITY;
  return Math.max(...is.flatMap((stop, s) => stop.map((p, i) => distance(p, should[s][i]))));
}

describe('a block with its directions and hands carried along (its legs turned and mirrored: fit/whole-blocks)', () => {
  test('turned, has its needle points turned', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.oneof(fc.constantFrom(90, 180, 270), fc.double({ min: -180, max: 180, noNaN: true })),
        (seed, turn) => {
          const block = cut(seed);
          const dressing = defaultDressing(block.map, { source, dictionary: builtIn });
          const straight = needlePoints(dress(block, dressing, builtIn));
          const turned = needlePoints(dress(block, placed(dressing, { turn }), builtIn));
          const placement = placementOf(block.map, 1, turn);
          const should = straight.map((stop) => stop.map((p) => placedPoint(p, placement)));
          expect(furthest(turned, should)).toBeLessThan(0.1);
        },
      ),
      { numRuns: 12 },
    );
  }, 60_000);
});

describe('a block made larger or smaller', () => {
  test('has as many repeats as come nearest to the wanted length, counted afresh on every stretch', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (seed, scale) => {
          const block = cut(seed);
          const dressing = defaultDressing(block.map, { source, dictionary: builtIn, stitch: 'herringbone' });
          const { lines } = dress(block, placed(dressing, { scale }), builtIn);
          const wrong = lines.flatMap(({ fit: { seam, wanted, stretches } }) =>
            // of a line without corners: sum ln^2(L / (r p)) is least, in half repeats
            stretches.length !== 1 || stretches[0].repeats < 1
              ? []
              : stretches.flatMap(({ from, to, repeats }) => {
                  const miss = (count: number) => Math.abs(Math.log((to - from) / (count * wanted)));
                  const better = [repeats - 0.5, repeats + 0.5].filter(
                    (count) => count > 0 && miss(count) < miss(repeats) - 1e-9,
                  );
                  return better.map(
                    (count) => `seam ${seam}: ${count} would be nearer than ${repeats} of ${to - from} mm`,
                  );
                }),
          );
          expect(wrong).toEqual([]);
        },
      ),
      { numRuns: 12 },
    );
  }, 60_000);

  test('fits its hoop with all that is sewn on it, and a little larger would not', () => {
    const hoop = { width: 100, height: 130 };
    for (const outline of ['trim', 'join'] as const) {
      const block = cut(7);
      const dressing: Dressing = {
        ...defaultDressing(block.map, { source, dictionary: builtIn, outline }),
        hoop,
      };
      const fitted = dress(block, placed(dressing, { scale: 'hoop' }), builtIn);
      const tooSmall = ({ findings }: Dressed) => findings.some(({ code }) => code === 'hoop-too-small');
      expect(tooSmall(fitted)).toBe(false);
      const note = fitted.findings.find(({ code }) => code === 'made-to-fit')!;
      const scale = Number(/made ([\d.]+) times/.exec(note.message)![1]);
      expect(fitted.block.map.width).toBeCloseTo(scale * block.map.width, 9);
      expect(tooSmall(dress(block, placed(dressing, { scale }), builtIn))).toBe(false);
      expect(tooSmall(dress(block, placed(dressing, { scale: scale * 1.02 }), builtIn))).toBe(true);
      expect(fitted.dressing.block.scale, 'kept as asked').toBe('hoop');
    }
  }, 60_000);

  test('keeps its size where it fits its hoop as it is, and is told so', () => {
    const block = cut(7);
    const { width, height } = block.map;
    const dressing: Dressing = {
      ...defaultDressing(block.map, { source, dictionary: builtIn, seams: [], outline: 'trim' }),
      hoop: { width, height },
    };
    const { findings, block: fitted } = dress(block, placed(dressing, { scale: 'hoop' }), builtIn);
    expect(fitted.map.width).toBe(width);
    const { message } = findings.find(({ code }) => code === 'made-to-fit')!;
    expect(message).toContain('keeps its size');
    expect(message).not.toContain('times as large');
  });

  test('cannot fit a hoop that is not named', () => {
    const block = cut(7);
    const dressing = defaultDressing(block.map, { source, dictionary: builtIn });
    expect(() => dress(block, placed(dressing, { scale: 'hoop' }), builtIn)).toThrow(
      'block.scale: is "hoop", and there is no hoop',
    );
  });
});

describe('a block from a stitch file', () => {
  const panel = readStitchBlock(piecedPanel(), 'panel.dst', { ...source, stops: SEAM_STOPS });
  const planned = (more: Partial<Dressing> = {}): Dressing => ({
    ...defaultDressing(panel.map, {
      source: { ...source, stops: SEAM_STOPS },
      dictionary: builtIn,
      edge: 'blanket',
    }),
    ...more,
  });
  const sewn = (dressed: Dressed) => stopsOf(readDst(writeDesign(dressed.design), 'x'));

  test('has the treatment of its edge sewn after its own edge, and all others before', () => {
    const dressed = dress(panel, planned(), builtIn);
    const stops = sewn(dressed);
    const { design } = dressed;
    const own = stopsOf(panel.existing!);
    // the last stop of the file is the new edge, the one before it the satin that came with the block
    expect(design.stops.filter(({ seams }) => seams.includes('outline')).map(({ kind }) => kind)).toEqual([
      'edge',
    ]);
    expect(stops[stops.length - 2].runs).toEqual(own[PANEL_STOPS.length - 1].runs);
    const edge = toPoints(design.stops[design.stops.length - 1].runs.xy);
    const last = stops[stops.length - 1].runs.flatMap(toPoints);
    expect(Math.abs(last.length - edge.length)).toBeLessThan(0.05 * edge.length);
    const [dx, dy] = panel.origin;
    expect(distance(last[0], [edge[0][0] + dx, edge[0][1] + dy])).toBeLessThan(0.1);
    expect(stops.slice(0, 25).map(({ runs }) => runs)).toEqual(own.slice(0, 25).map(({ runs }) => runs));
  });

  test('has it where all others are when the maker says where the new stops go in', () => {
    const stops = sewn(dress(panel, planned({ after: 25 }), builtIn));
    expect(stops[stops.length - 1].runs).toEqual(stopsOf(panel.existing!)[25].runs);
  });

  test('counts its stops as they are once some are left out', () => {
    const keepClear = [{ name: 'tack', stops: [4] }];
    const without = (leaveOut: number[], more: Partial<Dressing> = {}) =>
      dress(panel, placed(planned(more), { leaveOut }), builtIn);
    const dressed = without([1, 2], { after: 9, keepClear });
    expect(dressed.design.before!.stops).toBe(7);
    expect(() => without([4], { keepClear })).toThrow(
      '--leave-out 4: leaves nothing of tack, which is to be kept clear; keep its stops, or do not keep them clear',
    );
    const clear = dress(panel, planned({ after: 9, keepClear }), builtIn).keepClear;
    expect(dressed.keepClear.map(({ area }) => area.rings)).toEqual(clear.map(({ area }) => area.rings));
    expect(() => without([1, 2, 3], { after: 3 })).toThrow('leaves nothing up to stop 3');
    expect(without([26]).design.after).toBeNull();
  });
});

describe('the order that the maker wants', () => {
  const block = cut(11);
  const plan = defaultDressing(block.map, { source, dictionary: builtIn });
  const sewnOrder = (dressing: Dressing) => dress(block, dressing, builtIn).lines.map(({ fit }) => fit.seam);

  test('is that in which those seams are sewn', () => {
    const usual = sewnOrder(plan);
    expect(usual.length).toBeGreaterThan(3);
    const [a, , b, c] = usual;
    const asked = sewnOrder({ ...plan, order: [c, a, b] });
    expect(asked.filter((seam) => [a, b, c].includes(seam))).toEqual([c, a, b]);
    expect(sewnOrder({ ...plan, order: usual })).toEqual(usual);
  });

  test('ends short what is to be sewn after what it would tuck under, and says so', () => {
    const { lines, findings } = dress(block, plan, builtIn);
    const usual = lines.map(({ fit }) => fit.seam);
    const backward = dress(block, { ...plan, order: [...usual].reverse() }, builtIn);
    expect(backward.lines.map(({ fit }) => fit.seam)).toEqual([...usual].reverse());
    expect(findings.map(({ code }) => code)).not.toContain('short-by-order');
    const told = backward.findings.filter(({ code }) => code === 'short-by-order');
    expect(told.length).toBeGreaterThan(0);
    expect(told[0].message).toMatch(/is sewn after the one on seam \d+, so it stops short/);
  });

  test('names dressed seams, each once', () => {
    expect(() => dress(block, { ...plan, order: [99] }, builtIn)).toThrow('order: seam 99: has no treatment');
    expect(() => dress(block, { ...plan, order: [2, 2] }, builtIn)).toThrow('order: seam 2: is named twice');
  });
});
