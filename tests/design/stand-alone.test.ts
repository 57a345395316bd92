import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Block } from '../../src/block/block.js';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { readStitchBlock } from '../../src/block/read-stitch-file.js';
import { type Design, type Stop, stopsInOrder } from '../../src/design/design.js';
import { splitAfter } from '../../src/design/existing.js';
import { writeDesign } from '../../src/design/write-design.js';
import { dress } from '../../src/dress.js';
import type { BlockSource, Dressing } from '../../src/formats/dressing.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { readDst } from '../../src/formats/dst-read.js';
import type { Runs } from '../../src/needle/run.js';
import { defaultDressing } from '../../src/plan.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import { builtIn } from '../stitches/dictionary.js';
import { type Run, stop } from './designs.js';
import { program, sewOn } from './machine.js';

const demo = (file: string) => readFileSync(new URL(`../../gallery/demo/${file}`, import.meta.url), 'utf8');
const source: BlockSource = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };

async function panel(): Promise<Design> {
  const dressing = await readDressing(demo('panel.dressing.json'), 'panel.dressing.json');
  const block = await readSvgBlock(demo('panel.svg'), 'panel.svg', dressing.block);
  return dress(block, dressing, builtIn).design;
}

/** The new stops between those of a pieced file, an edge behind the last of them. */
async function opened(): Promise<Design> {
  const asked: BlockSource = { ...source, file: 'panel.dst', stops: [...SEAM_STOPS] };
  const block = readStitchBlock(piecedPanel(), 'panel.dst', asked);
  const edge = block.map.outline ? { edge: 'blanket' } : {};
  return dress(block, defaultDressing(block.map, { source: asked, dictionary: builtIn, ...edge }), builtIn)
    .design;
}

/** Accents are figures one by one, with jumps between them. */
function accented(): Design {
  const map = mapOfLines([
    [
      [20, 20],
      [180, 60],
    ],
    [
      [20, 120],
      [180, 100],
    ],
  ]);
  const block: Block = { name: 'two', map, existing: null, stops: [], origin: [0, 0], findings: [] };
  const plain = defaultDressing(map, { source, dictionary: builtIn, stitch: 'herringbone' });
  const dressing: Dressing = {
    ...plain,
    treatments: plain.treatments.map((treatment, i) => ({
      ...treatment,
      accents: [
        {
          row: 0,
          seat: 'crossing',
          ornament: i === 0 ? 'daisy' : 'french-knot',
          parameters: {},
          thread: 0,
          passes: 2,
          every: 1 + i,
        },
      ],
    })),
  };
  return dress(block, dressing, builtIn).design;
}

/** Places of the new stops in the file, from 0. */
const newStops = (design: Design): number[] => stopsInOrder(design).flatMap((stop, i) => (stop ? [i] : []));

const designs: [string, () => Design | Promise<Design>][] = [
  ['the demo panel', panel],
  ['a block with accents', accented],
  ['stops put in between those of a pieced file', opened],
];

describe.each(designs)('%s on a machine that holds thread', async (_, made) => {
  const design = await made();

  it('has no loose end and no thread between stops, whichever stops are sewn, in whatever order, and the same holes', () => {
    const sewing = program(writeDesign(design));
    const stops = newStops(design);
    expect(stops.length).toBeGreaterThan(3);
    const alone = new Map(stops.map((stop) => [stop, sewOn(sewing, [stop])]));
    expect([...alone.values()].flatMap(({ faults }) => faults)).toEqual([]);
    const any = fc.array(fc.constantFrom(...stops), { maxLength: 2 * stops.length });
    fc.assert(
      fc.property(any, (chosen) => {
        const { holes, faults } = sewOn(sewing, chosen);
        const union = chosen.flatMap((stop) => alone.get(stop)!.holes);
        expect(faults).toEqual([]);
        expect(holes).toEqual(union);
      }),
      { numRuns: 30 },
    );
  });

  it('has a loose end where one tie is taken out', () => {
    const untied = fc.integer({ min: 0 }).chain((pick) => {
      const s = pick % design.stops.length;
      const runs = design.stops[s].runs.start.length - 1;
      return fc.record({ s: fc.constant(s), run: fc.nat(runs - 1), atEnd: fc.boolean() });
    });
    fc.assert(
      fc.property(untied, ({ s, run, atEnd }) => {
        const { xy, start } = design.stops[s].runs;
        const far = (i: number) => Math.hypot(xy[2 * i + 2] - xy[2 * i], xy[2 * i + 3] - xy[2 * i + 1]);
        // a short leg sewn there and back again holds without a tie
        fc.pre(far(atEnd ? start[run + 1] - 5 : start[run] + 3) > 1.3);
        // a run that begins in the hole where another ends goes on from it
        const before = atEnd ? start[run + 1] - 1 : start[run] - 1;
        fc.pre(before < 0 || 2 * before + 2 >= xy.length || far(before) > 0.3);
        const loose = { ...design, stops: design.stops.with(s, withoutTie(design.stops[s], run, atEnd)) };
        const { faults } = sewOn(program(writeDesign(loose)), newStops(loose));
        expect(faults.map(({ what }) => what)).toContain(atEnd ? 'loose end' : 'loose start');
      }),
      { numRuns: 20 },
    );
  });
});

const bare: Design = { before: null, after: null, stops: [], origin: [0, 0], name: 'bare' };

/** Without the back and forward of one tie. */
function withoutTie(stop: Stop, run: number, atEnd: boolean): Stop {
  const { xy, start } = stop.runs;
  const cut = atEnd ? start[run + 1] - 2 : start[run];
  const runs: Runs = {
    xy: Float64Array.of(...xy.subarray(0, 2 * cut), ...xy.subarray(2 * cut + 4)),
    start: start.map((at, i) => (i > run ? at - 2 : at)),
  };
  return { ...stop, runs };
}

describe('the way back to where an existing file goes on', () => {
  const tied = (x: number, y: number): Run => [
    [x, y],
    [x + 0.6, y],
    [x, y],
    [x + 0.6, y],
    [x + 3, y],
    [x + 2.4, y],
    [x + 3, y],
    [x + 2.4, y],
  ];

  it('is trimmed however short it is, so that no thread is drawn to the change', () => {
    const place = fc.double({ min: -12, max: 12, noNaN: true });
    fc.assert(
      fc.property(place, place, (x, y) => {
        const file = writeDesign({ ...bare, stops: [stop([tied(0, 0)]), stop([tied(5, 5)])] });
        const { before, after } = splitAfter(readDst(file, 'two.dst'), 1);
        const design: Design = { ...bare, before, after, stops: [stop([tied(2.4 + x, y)])] };
        const sewing = program(writeDesign(design));
        expect(sewOn(sewing, [0, 1, 2]).faults).toEqual([]);
        expect(sewOn(sewing, [2]).holes).toEqual(sewOn(program(file), [1]).holes);
      }),
    );
  });
});

describe('every stitch and ornament of the library', () => {
  const weights = ['No. 40', 'No. 12'];
  const map = mapOfLines([
    [
      [20, 20],
      [95, 60],
    ],
    [
      [20, 120],
      [60, 100],
      [95, 130],
    ],
  ]);
  const block: Block = { name: 'two', map, existing: null, stops: [], origin: [0, 0], findings: [] };
  const inWeight = (dressing: Dressing, weight: string): Dressing => ({
    ...dressing,
    threads: dressing.threads.map((thread) => ({ ...thread, weight })),
  });
  const looseOf = (dressing: Dressing) => {
    const { design } = dress(block, dressing, builtIn);
    const { faults } = sewOn(program(writeDesign(design)), newStops(design));
    return faults.map(({ stop: s, what, at }) => `${design.stops[s].title}: ${what} at ${at}`);
  };

  it.each(weights)('is tied in and off in %s', (weight) => {
    const plan = (stitch?: string) =>
      inWeight(defaultDressing(map, { source, dictionary: builtIn, stitch }), weight);
    const loose = [...builtIn.stitches.keys()].flatMap((stitch) => looseOf(plan(stitch)));
    const ornaments = [...builtIn.ornaments.values()].map(({ name, threads }, i) => ({
      ornament: name,
      at: [20 + 40 * (i % 5), 30 + 50 * Math.floor(i / 5)] as const,
      parameters: {},
      thread: 0,
      moreThreads: threads.slice(1).map(() => 0),
      passes: 2,
    }));
    expect([...loose, ...looseOf({ ...plan('herringbone'), treatments: [], ornaments })]).toEqual([]);
  });
});
