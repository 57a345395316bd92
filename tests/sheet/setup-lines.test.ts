import { expect, test } from 'vitest';
import type { DressReport } from '../../src/report/dress-report.js';
import { setupLines } from '../../src/sheet/setup-lines.js';

const needle = (...threads: ({ weight: string; finish?: string } | null)[]): string => {
  const stops = threads.map((thread) => ({ thread: thread && { name: 'Gold', hex: '#d3a52c', ...thread } }));
  const report = { stops, totals: { bobbinM: 3.14 } } as unknown as DressReport;
  return setupLines(report)[0].usual.replaceAll('\u00a0', ' ');
};

// Common practice: the heavier the thread, the larger the eye; from memory.
test.each([
  ['No. 60', '65/9 or 70/10 for No. 60'],
  ['No. 40', '75/11 for No. 40'],
  ['40 wt', '75/11 for No. 40'],
  ['No. 30', '90/14 for No. 30'],
  ['No. 12', '100/16 with a large eye for No. 12'],
])('thread of %s goes through a needle %s', (weight, usual) => {
  expect(needle({ weight })).toBe(usual);
});

test('each kind of thread has a needle of its own, the finest first, metallic last', () => {
  expect(
    needle(
      { weight: 'No. 12' },
      { weight: 'No. 40' },
      { weight: 'No. 40', finish: 'Metallic' },
      { weight: 'No. 40' },
    ),
  ).toBe('75/11 for No. 40; 100/16 with a large eye for No. 12; 90/14 for metallic thread');
});

test('a block whose threads are not known is taken to be sewn in No. 40', () => {
  expect(needle(null)).toBe('75/11 for No. 40');
});

test('the bobbin line tells how much all of it takes', () => {
  const report = { stops: [], totals: { bobbinM: 3.14 } } as unknown as DressReport;
  expect(setupLines(report)[1].usual).toContain('3.1 m');
});
