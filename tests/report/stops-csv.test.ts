import { describe, expect, test } from 'vitest';
import type { DressReport, StopLine } from '../../src/report/dress-report.js';
import { stopsCsv } from '../../src/report/stops-csv.js';

const stop = (number: number, stitches: number, more: Partial<StopLine> = {}): StopLine => ({
  stop: number,
  title: 'Feather, seam 4',
  kind: 'treatment',
  seams: [4],
  thread: { name: 'Old gold', hex: '#d3a52c', weight: 'No. 40' },
  stitches,
  jumps: 5,
  trims: 1,
  threadM: 1.25,
  bobbinM: 1.2,
  minutes: 2.5,
  ...more,
});
const table = (...stops: StopLine[]) =>
  stopsCsv({ stops } as unknown as DressReport)
    .trimEnd()
    .split('\r\n');
const column = (lines: readonly string[], name: string) => {
  const at = lines[0].split(',').indexOf(name);
  return lines.slice(1).map((line) => line.split(',')[at]);
};

describe('the table of color stops', () => {
  test('has a row for each stop, with what, seams, thread, weight, costs', () => {
    const plain = stop(1, 300, { title: 'Feather', seams: [4, 5, 'outline'] });
    expect(table(plain)).toEqual([
      'stop,what,kind,seams,thread,color,weight,stitches,first stitch,jumps,trims,thread m,bobbin m,minutes',
      '1,Feather,treatment,4 5 outline,Old gold,#d3a52c,No. 40,300,1,5,1,1.25,1.2,2.5',
    ]);
    expect(table(stop(1, 300))[1]).toContain('1,"Feather, seam 4",treatment');
  });

  test('tells the running number of the stitch that each begins with; a stop without stitches begins with none', () => {
    const titled = { title: 'Feather' };
    const lines = table(stop(1, 300, titled), stop(2, 0, titled), stop(3, 20, titled), stop(4, 1, titled));
    expect(column(lines, 'first stitch')).toEqual(['1', '', '301', '321']);
  });

  test('leaves the thread open of stops that came with the block', () => {
    const lines = table(
      stop(1, 7, { title: 'came with the block', kind: 'existing', seams: [], thread: null }),
    );
    expect(lines[1]).toBe('1,came with the block,existing,,,,,7,1,5,1,1.25,1.2,2.5');
  });
});
