import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Block } from '../../src/block/block.js';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { readStitchBlock } from '../../src/block/read-stitch-file.js';
import { recognizeStops } from '../../src/block/roles/recognize.js';
import { type Dressed, dress } from '../../src/dress.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { defaultDressing } from '../../src/plan.js';
import { type DressReport, dressReport } from '../../src/report/dress-report.js';
import { CAUTIONS } from '../../src/sheet/cautions.js';
import { haltsOf } from '../../src/sheet/halts.js';
import { sewSheet } from '../../src/sheet/sew-sheet.js';
import { sheetText } from '../../src/sheet/sheet-text.js';
import { piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import { builtIn } from '../stitches/dictionary.js';
import { darkStretches, grayPage, hasPoppler, pageTexts, pdfInfo } from './poppler.js';

const demo = (name: string) => readFileSync(new URL(`../../gallery/demo/${name}`, import.meta.url), 'utf8');

interface Work {
  readonly dressed: Dressed;
  readonly report: DressReport;
}
const worked = (block: Block, dressing: Dressing): Work => {
  const dressed = dress(block, dressing, builtIn);
  return { dressed, report: dressReport(dressed, []) };
};

/** A busy machine takes its time to load all this, ms. */
const PATIENT = 60_000;

let panel: Work;
let dressing: Dressing;
let block: Block;
let sheet: Uint8Array;
beforeAll(async () => {
  dressing = await readDressing(demo('panel.dressing.json'), 'panel.dressing.json');
  block = await readSvgBlock(demo('panel.svg'), 'panel.svg', dressing.block);
  panel = worked(block, dressing);
  sheet = (await sewSheet(panel.dressed, panel.report, [], { paper: 'a4' })).bytes;
}, PATIENT);

/** The sheet of the demo panel with threads named and colored otherwise. */
async function threaded(
  change: (thread: Dressing['threads'][number], i: number) => Dressing['threads'][number],
) {
  const { dressed, report } = worked(block, { ...dressing, threads: dressing.threads.map(change) });
  return (await sewSheet(dressed, report, [], { paper: 'a4' })).bytes;
}

test('the same work gives the same sheet, byte for byte', async () => {
  const again = await sewSheet(panel.dressed, panel.report, [], { paper: 'a4' });
  expect(Buffer.from(again.bytes).equals(Buffer.from(sheet))).toBe(true);
});

test('cautions are those of the README', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const section = readme.slice(readme.indexOf('## At the machine')).split(/^## /m)[1];
  const listed = section
    .split(/^- /m)
    .slice(1)
    .map((text) => text.replace(/\s+/g, ' ').trim());
  expect(CAUTIONS).toEqual(listed);
});

test('a program learns what the sheet tells beyond the report', async () => {
  const { told } = await sewSheet(panel.dressed, panel.report, [], { paper: 'letter' });
  expect(told).toMatchObject({ paper: 'letter', scale: 1, halts: [] });
  // a stop that sews one seam begins on it
  expect(told.stops.map(({ beginsOn }) => beginsOn)).toEqual(panel.report.stops.map(({ seams }) => seams[0]));
});

describe.skipIf(!hasPoppler)('printed, as poppler shows it', () => {
  test.each([
    ['a4', '595.276 x 841.89 pts (A4)'],
    ['letter', '612 x 792 pts (letter)'],
  ] as const)('pages are %s', async (paper, size) => {
    const { bytes, told } = await sewSheet(panel.dressed, panel.report, [], { paper });
    const info = pdfInfo(bytes);
    expect(info.get('Page size')).toBe(size);
    expect(Number(info.get('Pages'))).toBe(told.pages);
    expect(pageTexts(bytes).every((text, i) => text.includes(`page ${i + 1} of ${told.pages}`))).toBe(true);
  });

  test('bars of 100 mm and of an inch are 1181 and 300 dots long at 300 dots to the inch', () => {
    const page = grayPage(sheet, 1, 300);
    const rows = Array.from({ length: page.height }, (_, row) => darkStretches(page, row));
    const bars = rows.filter(
      (dark) =>
        dark.length === 2 && Math.abs(dark[0] - (100 / 25.4) * 300) < 2 && Math.abs(dark[1] - 300) < 1.5,
    );
    expect(bars.length).toBeGreaterThan(0);
    expect(pageTexts(sheet)[0]).toMatch(/100 mm\s+Print at 100 %.*1 inch/);
  });

  test('the field is drawn at actual size: 130 x 180 mm', () => {
    const page = grayPage(sheet, 1, 300);
    const longest = Array.from({ length: page.height }, (_, row) => Math.max(0, ...darkStretches(page, row)));
    // its edge is 0.4 mm wide, half of it outside
    const edge = ((130 + 0.4) / 25.4) * 300;
    const rows = longest.flatMap((dots, row) => (Math.abs(dots - edge) < 2 ? [row] : []));
    expect(rows[rows.length - 1] - rows[0]).toBeGreaterThan((180 / 25.4) * 300 - 2);
    expect(rows[rows.length - 1] - rows[0]).toBeLessThan((180.5 / 25.4) * 300 + 2);
  });

  test('each stop has its line, with the numbers of the report', () => {
    const text = pageTexts(sheet).join('\n');
    let first = 1;
    const missing = panel.report.stops.filter(({ stop, title, seams, stitches, minutes }) => {
      const cells = [
        stop,
        '[A-E]',
        title,
        seams.join(', '),
        `seam ${seams[0]}`,
        first,
        stitches,
        minutes.toFixed(1),
        'yes',
      ];
      first += stitches;
      return !new RegExp(`^\\s*${cells.join('\\s+')}\\s*$`, 'm').test(text);
    });
    expect(missing).toEqual([]);
    const { totals } = panel.report;
    expect(text).toContain(`${totals.stops} color stops, ${totals.stitches} stitches`);
    expect(text.replace(/\s+/g, ' ')).toContain(`${totals.widthMm} x ${totals.heightMm} mm`);
  });

  test('there are lines to fill in, the warning about machines that do not halt, and the cautions', () => {
    const text = pageTexts(sheet).join(' ').replace(/\s+/g, ' ');
    const wanted = [
      'Needle',
      'Bobbin',
      'Stabilizer',
      'Topping',
      'may not halt at a color change',
      'manual',
      'moving needle',
    ];
    expect(wanted.filter((words) => !text.includes(words))).toEqual([]);
    expect(text).toContain(`fine bobbin thread, ${panel.report.totals.bobbinM.toFixed(1)} m for`);
  });

  test('without color, pale thread on pale cloth still shows: its edge stands out from the cloth by 3 and more', async () => {
    const pdf = await threaded((thread) => ({ ...thread, hex: '#fbf7ee' }));
    const { width, values } = grayPage(pdf, 1, 300);
    const dots = (mm: number) => Math.round((mm / 25.4) * 300);
    // a stretch of seam 8, from the upper left corner of the field, away from numbers
    const stretch: number[] = [];
    for (let y = dots(44 + 95); y < dots(44 + 108); y++)
      for (let x = dots(14 + 32); x < dots(14 + 44); x++) stretch.push(values[y * width + x]);
    stretch.sort((a, b) => a - b);
    const light = (gray: number) => (gray / 255) ** 2.2;
    const cloth = stretch[Math.floor(0.8 * stretch.length)];
    const edges = stretch[Math.floor(0.04 * stretch.length)];
    expect((light(cloth) + 0.05) / (light(edges) + 0.05)).toBeGreaterThan(3);
  });
});

describe('the sheet of a pieced stitch file', () => {
  let told: Awaited<ReturnType<typeof sewSheet>>['told'];
  let bytes: Uint8Array;
  let work: Work;
  beforeAll(async () => {
    const source = { file: 'pieced.dst', stops: SEAM_STOPS, snap: 0.3, through: [] };
    const pieced = await readStitchBlock(piecedPanel(), 'pieced.dst', source);
    const { roles, after } = recognizeStops(pieced.existing!);
    work = worked(pieced, { ...defaultDressing(pieced.map, { source, dictionary: builtIn }), after });
    ({ told, bytes } = await sewSheet(work.dressed, work.report, roles, { paper: 'a4' }));
  }, PATIENT);
  const haltsBefore = (stop: number) =>
    told.halts.filter((halt) => halt.before === stop).map(({ what }) => what);

  test('halts where its own stops ask for it', () => {
    // stops of the fixture: 3 seam, 4 tack-down; 19 placement, 20 tack-down, 21 zigzag of a patch laid on top; an edge last
    expect(haltsBefore(2)).toEqual([expect.stringContaining('Lay the first piece')]);
    expect(haltsBefore(3)).toEqual([
      expect.stringContaining('leave what the next seams take in'),
      expect.stringContaining('Lay the next piece face down'),
    ]);
    expect(haltsBefore(4)).toEqual([expect.stringContaining('fold the piece over')]);
    expect(haltsBefore(20)).toEqual([expect.stringContaining('Lay the fabric')]);
    expect(haltsBefore(21)).toEqual([expect.stringContaining('Trim excess now, close outside')]);
    const last = work.report.stops.length;
    expect(haltsBefore(last)).toEqual([expect.stringContaining('the block close to its outline')]);
    expect(told.halts.filter(({ what }) => what.includes('outline'))).toHaveLength(1);
  });

  test('has a piece laid before each of its seams, and for no other of its stops', () => {
    const laid = told.halts.filter(({ what }) => what.includes('Lay the next piece'));
    expect(laid.map(({ before }) => before)).toEqual(SEAM_STOPS.filter((stop) => stop < 19));
  });

  test('a line sewn twice between a placement line and its edge holds what lies on top, and joins nothing', () => {
    // stop 20 of the fixture, as the maker may say of it
    const held = recognizeStops(work.dressed.block.existing!, new Map([[20, 'seam']])).roles;
    expect(held[19].role).toBe('seam');
    expect(haltsOf(work.dressed, held)).toEqual(told.halts);
  });

  test('counts a halt once, however much is done at it', () => {
    const { size } = new Set(told.halts.map(({ before }) => before));
    expect(size).toBeLessThan(told.halts.length);
    expect(sheetText(work.report, told)).toContain(`, ${size} halts to trim, lay or look.`);
  });

  test('tells its own stops as such, none of them optional', () => {
    const own = work.report.stops.filter(({ kind }) => kind === 'existing').map(({ stop }) => stop);
    expect(own).toHaveLength(26);
    expect(told.stops.filter(({ stop, optional }) => own.includes(stop) && optional)).toEqual([]);
    expect(told.stops.filter(({ optional }) => optional).length).toBe(work.report.stops.length - own.length);
  });

  test('a seam of its own begins on the line that it sews, though it is begun out in the allowance', () => {
    // stops 3, 5, ... of the fixture sew one line of the block each
    const sewn = SEAM_STOPS.filter((stop) => stop < 19);
    const begins = sewn.map((stop) => told.stops[stop - 1].beginsOn);
    expect(new Set(begins).size).toBe(sewn.length);
    expect(begins.filter((seam) => typeof seam !== 'number')).toEqual([]);
    // a tack-down is on no line
    expect(told.stops[3].beginsOn).toBeNull();
  });

  test.skipIf(!hasPoppler)(
    'a long table goes on over pages, its headings repeated, every stop once and in order',
    () => {
      const pages = pageTexts(bytes);
      const rows = pages.map((text) => [
        ...text.matchAll(/^\s*(\d+)\s.*\s\d+\s+\d+\s+\d+\.\d\s+(?:yes|no)\b/gm),
      ]);
      expect(rows.flat().map(([, stop]) => Number(stop))).toEqual(work.report.stops.map(({ stop }) => stop));
      const withRows = pages.filter((_, i) => rows[i].length > 0);
      expect(withRows.length).toBeGreaterThan(1);
      expect(withRows.filter((text) => !/Stop\s+Thread\s+What is sewn/.test(text))).toEqual([]);
      expect(pages.join('\n')).toMatch(/21\s+the block’s\s+Of the block: zigzag or satin edge/);
    },
  );
});
