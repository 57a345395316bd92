import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { account, accountOfRecords } from '../../src/design/account.js';
import type { Design } from '../../src/design/design.js';
import { splitAfter } from '../../src/design/existing.js';
import { COMMON_PACE } from '../../src/design/pace.js';
import { toRecords, writeDesign } from '../../src/design/write-design.js';
import { readDst } from '../../src/formats/dst-read.js';
import { type LittleRecord, littleRecords } from '../formats/little-dst.js';
import { designArbitrary, designOf, type Run, stop } from './designs.js';

/** Records by stop. */
function littleStops(records: readonly LittleRecord[]): LittleRecord[][] {
  const stops: LittleRecord[][] = [[]];
  for (const record of records) {
    if (record.kind === 'change') stops.push([]);
    else stops[stops.length - 1].push(record);
  }
  return stops;
}

/** Trims as a machine sees them: three jumps in a row with a stitch somewhere before. */
const trimsOf = (stop: readonly LittleRecord[]) =>
  stop
    .map(({ kind }) => kind[0])
    .join('')
    .replace(/^j+/, '')
    .match(/j{3,}/g)?.length ?? 0;

describe('the account of a design', () => {
  it('counts what the file holds, stop by stop', () => {
    fc.assert(
      fc.property(designArbitrary, ({ runs, origin }) => {
        const design = designOf(runs, origin);
        const stops = littleStops(littleRecords(writeDesign(design)));
        const { stops: counted, totals } = account(design);
        expect(counted.map((s) => [s.stop, s.stitches, s.jumps, s.trims])).toEqual(
          stops.map((s, i) => [
            i + 1,
            s.filter((r) => r.kind === 'stitch').length,
            s.filter((r) => r.kind === 'jump').length,
            trimsOf(s),
          ]),
        );
        for (const key of ['stitches', 'jumps', 'trims'] as const) {
          expect(totals[key]).toBe(counted.reduce((sum, s) => sum + s[key], 0));
        }
        expect(accountOfRecords(toRecords(design))).toEqual(account(design));
      }),
    );
  });

  it('counts existing stops too, where the new ones go in', () => {
    const old = designOf([
      [
        [
          [0, 0],
          [2, 0],
        ],
      ],
      [
        [
          [2, 0],
          [2, 2],
          [2, 4],
        ],
      ],
    ]);
    const { before, after } = splitAfter(readDst(writeDesign(old), 'x'), 1);
    const design: Design = {
      before,
      after,
      stops: [
        stop([
          [
            [9, 0],
            [8, 0],
            [7, 0],
            [6, 0],
          ],
        ]),
      ],
      origin: [0, 0],
      name: 'x',
    };
    const { stops, totals } = account(design);
    expect(stops.map((s) => s.stitches)).toEqual([1, 3, 2]);
    expect(totals).toMatchObject({ stops: 3, stitches: 6, widthMm: 6, heightMm: 4 });
  });

  it('of nothing is nothing', () => {
    expect(account(designOf([]))).toMatchObject({
      stops: [],
      totals: { stitches: 0, stops: 0, minutes: 0, widthMm: 0 },
    });
  });

  const line: Run = Array.from({ length: 601 }, (_, i) => [2 * (i % 2), i * 0.1]);

  it('takes 600 stitches a minute, 7 s a trim, 1.5 minutes a thread change (common practice)', () => {
    expect(account(designOf([[line]])).stops[0].minutes).toBeCloseTo(1, 9);
    const far: Run = line.map(([x, y]) => [x + 40, y]);
    expect(account(designOf([[line, far]])).stops[0].minutes).toBeCloseTo(2 + 7 / 60, 9);
    expect(account(designOf([[line], [far]])).stops.map((s) => s.minutes)).toEqual([1, 2.5]);
    const slow = { ...COMMON_PACE, stitchesPerMinute: 300, changeMinutes: 0.1 };
    expect(account(designOf([[line], [far]]), slow).totals.minutes).toBeCloseTo(4.1, 9);
  });

  it('is slower with heavy threads', () => {
    const design = designOf([[line]]);
    const inThread = (weight: string) =>
      account({ ...design, stops: design.stops.map((s) => ({ ...s, thread: { ...s.thread, weight } })) })
        .totals.minutes;
    expect(inThread('No. 12')).toBeCloseTo(600 / 450, 9);
    for (const weight of ['No. 40', 'No. 30', 'No. 60', 'metallic'])
      expect(inThread(weight), weight).toBeCloseTo(1, 9);
    const metallic = design.stops.map((s) => ({ ...s, thread: { ...s.thread, finish: 'metallic' } }));
    expect(account({ ...design, stops: metallic }).totals.minutes).toBeCloseTo(600 / 450, 9);
  });

  it('gives the bobbin the other half of that for what is sewn, and nothing for thread that lies on top', () => {
    fc.assert(
      fc.property(designArbitrary, ({ runs, origin }) => {
        const { threadM, bobbinM } = account(designOf(runs, origin)).totals;
        expect(bobbinM).toBeLessThanOrEqual(threadM + 1e-9);
      }),
    );
    expect(account(designOf([[line]])).totals.bobbinM).toBeCloseTo(
      account(designOf([[line]])).totals.threadM,
      9,
    );
  });

  it('takes needle thread of half the 1 : 2.5 of a lockstitch, and thread that lies over the work', () => {
    // ISO 4915 type 301, seam length : thread = 1 : 2.5 for both threads, ideally 1 : 1 (apparelscience.com, teaching page)
    const straight: Run = [
      [0, 0],
      [5, 0],
      [10, 0],
    ];
    expect(account(designOf([[straight]])).totals.threadM).toBeCloseTo(0.0125, 9);
    const beside: Run = [
      [10, 6],
      [10, 10],
    ];
    expect(account(designOf([[straight, beside]])).totals.threadM).toBeCloseTo(0.0125 + 0.006 + 0.005, 9);
    const beyond: Run = [
      [10, 9],
      [10, 13],
    ];
    expect(account(designOf([[straight, beyond]])).totals.threadM).toBeCloseTo(0.0125 + 0.005, 9);
  });
});
