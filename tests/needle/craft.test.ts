import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { craftFor, threadWidth } from '../../src/needle/craft.js';

const ticket = fc.integer({ min: 1, max: 120 });

describe('what a thread asks for', () => {
  // Common practice: laid width by ticket number.
  test.each([
    ['No. 60', 0.25],
    ['No. 40', 0.4],
    ['No. 30', 0.45],
    ['No. 12', 0.65],
  ])('%s lies %d mm wide', (weight, width) => {
    expect(threadWidth(weight)).toBeCloseTo(width, 12);
  });

  test('is the same however its ticket number is written', () => {
    fc.assert(
      fc.property(ticket, (number) => {
        const crafts = ['No. ', 'no ', 'No.', ''].map((before) => craftFor(`${before}${number}`));
        expect(new Set(crafts.map((one) => JSON.stringify(one))).size).toBe(1);
        expect(craftFor(`${number} wt`)).toEqual(crafts[0]);
      }),
    );
  });

  test('grows with the thread: the lower the number, no narrower and no shorter its stitches', () => {
    fc.assert(
      fc.property(ticket, ticket, (a, b) => {
        const [thick, thin] = [craftFor(`No. ${Math.min(a, b)}`), craftFor(`No. ${Math.max(a, b)}`)];
        expect(thick.threadWidth).toBeGreaterThanOrEqual(thin.threadWidth);
        expect(thick.shortest).toBeGreaterThanOrEqual(thin.shortest);
      }),
    );
  });

  test('of a thread between two known ones lies between them', () => {
    expect(threadWidth('No. 50')).toBeCloseTo((0.4 + 0.25) / 2, 12);
  });
});
