import { describe, expect, it } from 'vitest';
import type { Stop } from '../../src/design/design.js';
import type { Dressed } from '../../src/dress.js';
import type { Finding } from '../../src/finding.js';
import type { SeamFit, Stretch } from '../../src/fit/fit.js';
import { dressReport } from '../../src/report/dress-report.js';
import { dressText } from '../../src/report/dress-text.js';

const stretch = (from: number, to: number, repeats: number): Stretch => ({
  from,
  to,
  repeats,
  ends: ['junction', 'corner'],
});

const fitted = (seam: number, stretches: Stretch[]): SeamFit => ({
  seam,
  stitch: 'feather',
  stretches,
  layers: [{ kind: 'row', index: 0, thread: 0, chains: [] }],
  marks: [],
  guides: [],
  rows: [
    {
      repeats: stretches.reduce((sum, { repeats }) => sum + repeats, 0),
      along: stretches.reduce((sum, { from, to }) => sum + to - from, 0),
    },
  ],
  accents: [],
  wanted: 8,
  endGap: [1.23456, 0],
  bandMm2: 100,
  scale: 1,
});

/** A straight line of so many stitches of 2 mm. */
const stop = (title: string, seam: number, stitches: number): Stop => ({
  title,
  kind: 'treatment',
  seams: [seam],
  thread: { name: 'straw', hex: '#c8962e', weight: 'No. 40' },
  runs: {
    xy: Float64Array.from({ length: 2 * (stitches + 1) }, (_, i) => (i % 2 ? seam * 5 : i)),
    start: Int32Array.of(0, stitches + 1),
  },
});

function dressed(stops: Stop[], fits: SeamFit[], findings: Finding[] = []): Dressed {
  return {
    block: {},
    dressing: { treatments: fits.map(() => ({ rows: [{}], ends: null })), ends: 'tuck' },
    lines: fits.map((fit, treatment) => ({
      treatment,
      fit,
      layers: fit.layers.map((layer, l) => ({ ...layer, runs: stops[treatment + l].runs })),
    })),
    design: { before: null, after: null, stops, origin: [0, 0], name: 'panel' },
    field: { width: 130, height: 180 },
    findings,
  } as unknown as Dressed;
}

describe('the report of a dressed block', () => {
  const two = dressed(
    [stop('feather on seam 1', 1, 30), stop('feather on seam 2', 2, 10)],
    [fitted(1, [stretch(1, 25, 3), stretch(25, 45, 2)]), fitted(2, [stretch(0, 20, 2.5)])],
  );

  it('numbers stops from 1 in the order of the machine, with their seams and thread', () => {
    expect(
      dressReport(two, []).stops.map(({ stop, seams, thread }) => [stop, seams, thread?.weight]),
    ).toEqual([
      [1, [1], 'No. 40'],
      [2, [2], 'No. 40'],
    ]);
  });

  it('sums stops up to its totals', () => {
    const { stops, totals } = dressReport(two, []);
    expect(totals.stops).toBe(2);
    expect(stops[0].stitches + stops[1].stitches).toBe(totals.stitches);
    expect(stops[0].threadM + stops[1].threadM).toBeCloseTo(totals.threadM, 1);
  });

  it('gives repeats as the sum over stretches, their length as fitted length by repeats', () => {
    const [first, second] = dressReport(two, []).fits;
    expect(first).toMatchObject({ repeats: 5, repeatMm: 8.8, wantedMm: 8, endGapMm: [1.235, 0], rows: 1 });
    expect(second).toMatchObject({ repeats: 2.5, repeatMm: 8 });
  });

  it("tells how each end was asked to be made: as the block's, unless its treatment says otherwise", () => {
    const said = (ends: unknown) => {
      const { treatments } = two.dressing;
      const dressing = { ...two.dressing, treatments: treatments.map((one) => ({ ...one, ends })) };
      return dressReport({ ...two, dressing } as Dressed, []).fits[0].ends;
    };
    expect(said(null)).toEqual(['tuck', 'tuck']);
    expect(said('bevel')).toEqual(['bevel', 'bevel']);
    expect(said([null, 'short'])).toEqual(['tuck', 'short']);
  });

  it('gives the stretch furthest from 1 as a ratio', () => {
    expect(dressReport(two, []).fits[0].stretch).toBe(1.25);
    const tight = dressed([stop('a', 1, 5)], [fitted(1, [stretch(0, 6.6, 1), stretch(6.6, 16, 1)])]);
    expect(dressReport(tight, []).fits[0].stretch).toBe(0.825);
  });

  const bead = { ornament: null, byHand: 'bead' };
  const figures = (more: Partial<SeamFit>): Dressed => {
    const fit = fitted(1, [stretch(0, 20, 4)]);
    const plain = dressed([stop('blanket', 1, 9), stop('a second blanket', 1, 18)], [{ ...fit, ...more }]);
    const treatments = [{ rows: [{}, {}], accents: [bead], ends: null }];
    return { ...plain, dressing: { treatments } } as unknown as Dressed;
  };

  it("gives every row's own repeats, at its own stop", () => {
    const rows = [
      { repeats: 4, along: 20 },
      { repeats: 8, along: 20 },
    ];
    const layers = [0, 1].map((index) => ({ kind: 'row', index, thread: 0, chains: [] }) as const);
    const report = dressReport(figures({ rows, layers }), []);
    expect(report.stops.map(({ repeats }) => repeats)).toEqual([
      { repeats: 4, repeatMm: 5 },
      { repeats: 8, repeatMm: 2.5 },
    ]);
    expect(report.fits[0].rowRepeats).toEqual(report.stops.map(({ repeats }) => repeats));
    expect(dressText(report)).toMatch(/4 of 5\.0 mm.*8 of 2\.5 mm/s);
  });

  it('gives the figures that stand, at their stop, and those left out with the reasons', () => {
    const at = [0, 0] as const;
    const leftOut = [
      { at, why: 'past-end' },
      { at, why: 'on-thread', other: 7 },
      { at, why: 'on-thread', other: 7 },
    ] as const;
    const layers = (['row', 'accent'] as const).map((kind) => ({ kind, index: 0, thread: 0, chains: [] }));
    const report = dressReport(figures({ layers, accents: [{ asked: 17, leftOut }] }), []);
    expect(report.fits[0].accentFigures).toEqual([
      {
        name: 'bead',
        asked: 17,
        placed: 14,
        leftOut: [
          { why: 'past-end', count: 1 },
          { why: 'on-thread', other: 7, count: 2 },
        ],
      },
    ]);
    expect(report.stops[1].figures).toBe(14);
    expect(dressText(report)).toContain('14 figures');
  });

  it('says of a line on which nothing was laid that it has no scale, rather than its full size', () => {
    const none = dressed([], [{ ...fitted(1, []), layers: [], scale: null }]);
    expect(dressReport(none, []).fits[0]).toMatchObject({ scale: null, repeats: 0, repeatMm: 0 });
  });

  it('survives JSON unchanged: plain records only', () => {
    const report = dressReport(two, ['panel.dst']);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  it('reads as a table, then the worst first', () => {
    const findings: Finding[] = [
      { level: 'note', code: 'bare', message: 'bare for 4 mm', seam: 1 },
      { level: 'error', code: 'unfit', message: 'too short for a repeat', seam: 2, at: [10.2, 4.8] },
    ];
    const text = dressText(
      dressReport(dressed([stop('feather on seam 1', 1, 9)], [fitted(1, [stretch(0, 24, 3)])], findings), []),
    );
    expect(text).toMatch(/^Stop +What +Seams +Repeats/);
    expect(text).toContain('3 of 8.0 mm');
    expect(text).toContain('in a sewing field of 130 x 180 mm.');
    expect(text.indexOf('seam 2: too short for a repeat (at 10, 5 mm)')).toBeGreaterThan(0);
    expect(text.indexOf('too short')).toBeLessThan(text.indexOf('bare for'));
  });
});
