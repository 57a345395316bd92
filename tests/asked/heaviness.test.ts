import { describe, expect, test } from 'vitest';
import { withHeavyRows } from '../../src/asked/heaviness.js';
import { dress } from '../../src/dress.js';
import type { Dressing, Row } from '../../src/formats/dressing.js';
import { builtIn } from '../stitches/dictionary.js';
import { dressingOf, oneSeam } from './dressed-line.js';

const row: Row = { stitch: 'blanket', parameters: {}, thread: 0, passes: 3, offset: 0 };
const { passes: _, ...unweighed } = row;
const inThread = (weight: string) => [{ name: 'gold', hex: '#b8860b', weight }];
const sewn = (dressing: Dressing) => dress(oneSeam, dressing, builtIn);
const told = (dressing: Dressing) =>
  sewn(dressing)
    .findings.filter(({ code }) => code === 'as-heavy-as' || code === 'not-as-heavy')
    .map(({ level, message }) => [level, message]);

describe('rows as heavy as a thread of a hand', () => {
  // By hand: two passes of No. 40, 0.4 mm wide, 0.2 mm apart are 0.6 mm; pearl No. 8 is 0.6 mm. Common practice.
  test('get the passes of the thread in use', () => {
    const points = (dressing: Dressing) => sewn(dressing).design.stops[0].runs.xy.length;
    const heavy = dressingOf({ rows: [{ ...unweighed, heavy: 'pearl-8' }] }, { threads: inThread('No. 40') });
    const twice = dressingOf({ rows: [{ ...unweighed, passes: 2 }] }, { threads: inThread('No. 40') });
    expect(points(heavy)).toBe(points(twice));
    expect(told(heavy)).toEqual([
      ['note', 'as heavy as pearl No. 8 (0.60 mm): 2 passes of No. 40, 0.60 mm wide'],
    ]);
    const finer = { ...heavy, threads: inThread('No. 60') };
    const thrice = dressingOf({ rows: [row] }, { threads: inThread('No. 60') });
    expect(points(finer)).toBe(points(thrice));
  });

  test('are told when the thread in use cannot be so fine', () => {
    const fine = dressingOf(
      { rows: [{ ...unweighed, heavy: 'one-strand' }] },
      { threads: inThread('No. 12') },
    );
    expect(told(fine)).toEqual([
      [
        'warning',
        'No. 12 cannot be as heavy as one strand (0.35 mm): one pass of it lies 0.65 mm wide; a finer thread would do',
      ],
    ]);
  });

  test('are told once, however many there are; accents and ornaments keep their weight', () => {
    const accent = { row: 0, seat: 'tip', ornament: 'french-knot', parameters: {}, thread: 0, passes: 1 };
    const work = { rows: [row, { ...row, offset: 12 }], accents: [accent] };
    const all = withHeavyRows(dressingOf(work, { threads: inThread('No. 40') }), 'pearl-5');
    expect(all.treatments[0].accents).toEqual([accent]);
    expect(all.treatments[0].rows.map(({ heavy, passes }) => [heavy, passes])).toEqual([
      ['pearl-5', undefined],
      ['pearl-5', undefined],
    ]);
    expect(told(all)).toHaveLength(1);
  });
});
