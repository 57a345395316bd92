import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { dress } from '../../src/dress.js';
import type { BlockSource, Dressing } from '../../src/formats/dressing.js';
import { defaultDressing } from '../../src/plan.js';
import { dressReport } from '../../src/report/dress-report.js';
import { haltsOf } from '../../src/sheet/halts.js';
import { sheetStops } from '../../src/sheet/sheet-stops.js';
import { builtIn } from '../stitches/dictionary.js';

const source: BlockSource = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
const svg = readFileSync(new URL('../../gallery/demo/panel.svg', import.meta.url), 'utf8');
const block = await readSvgBlock(svg, 'panel.svg', source);

const dressed = (treatment: string | null, more: Partial<Dressing> = {}, edge?: string) => {
  const saved = treatment === null ? undefined : builtIn.treatments.get(treatment);
  const plain = defaultDressing(block.map, {
    source,
    dictionary: builtIn,
    seams: [3, 6],
    treatment: saved,
    edge,
  });
  return dress(block, { ...plain, ...more }, builtIn);
};

describe('halts of new stops', () => {
  test('the block is laid on its outline, the box that held it is pulled out at the end', () => {
    const work = dressed(null, { hooping: { outline: true, basting: 9 } });
    expect(haltsOf(work, [])).toEqual([
      { before: 2, what: 'Lay the block on the outline just sewn.' },
      { before: work.design.stops.length + 1, what: 'When all is sewn, pull out the basting box.' },
    ]);
  });

  test('where the needle only comes to places it is stepped without thread; crosses are sewn and pulled out', () => {
    const align: [number, number][] = [[20, 20]];
    expect(haltsOf(dressed(null, { hooping: { align } }), []).map(({ what }) => what)).toEqual([
      expect.stringContaining('without thread'),
      expect.stringContaining('whether the block lies right'),
    ]);
    expect(haltsOf(dressed(null, { hooping: { align, crosses: true } }), []).map(({ what }) => what)).toEqual(
      [expect.stringContaining('whether the block lies right'), 'When all is sewn, pull out the crosses.'],
    );
  });

  test('ribbon is laid after each of its placement lines, and what holds it cannot be left out', () => {
    const work = dressed('herringbone-over-ribbon');
    const halts = haltsOf(work, []);
    expect(halts.length).toBe(2);
    const stops = sheetStops(work, dressReport(work, []), []);
    for (const { before, what } of halts) {
      expect(what).toMatch(/^Lay the .*\(\d+(\.\d+)? mm wide\) along the line just sewn\.$/);
      expect(stops[before - 2]).toMatchObject({ kind: 'treatment', optional: false });
    }
    expect(stops.filter(({ optional }) => optional)).toEqual([]);
  });

  test('a block whose outline is trimmed is trimmed before its edge, which covers the cut; another is not', () => {
    const edged = (outline: 'trim' | 'free') => dressed(null, { outline }, 'blanket');
    const at = edged('trim').design.stops.findIndex(({ kind }) => kind === 'edge') + 1;
    expect(haltsOf(edged('trim'), [])).toEqual([
      { before: at, what: expect.stringContaining('Trim excess now') },
    ]);
    expect(haltsOf(edged('free'), [])).toEqual([]);
    const optional = (outline: 'trim' | 'free') => {
      const work = edged(outline);
      return sheetStops(work, dressReport(work, []), []).find(({ kind }) => kind === 'edge')!.optional;
    };
    expect([optional('trim'), optional('free')]).toEqual([false, true]);
  });

  test('accents are left out with the row that they sit on', () => {
    const work = dressed('herringbone-knots');
    const stops = sheetStops(work, dressReport(work, []), []);
    const rows = stops.filter(({ kind }) => kind === 'treatment');
    expect(rows.length).toBe(2);
    for (const { seams, together } of rows) {
      expect(together.length).toBeGreaterThan(0);
      expect(together.map((stop) => stops[stop - 1])).toEqual(
        together.map(() => expect.objectContaining({ kind: 'accent', seams })),
      );
    }
  });
});
