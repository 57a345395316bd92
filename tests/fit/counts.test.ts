import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestCounts, type CountQuestion, costOf } from '../../src/fit/counts.js';

/** Every way to fill the stretches, tried one by one: the answer to hold the program against. */
function exhaustive(question: CountQuestion): { halfRepeats: number[]; cost: number } {
  const step = question.halves ? 1 : 2;
  let best: { halfRepeats: number[]; cost: number } | null = null;
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  const most = (length: number) => Math.ceil((2 * length) / question.wanted) * 3 + 4;
  const visit = (i: number, chosen: number[]) => {
    if (i === question.lengths.length) {
      if (question.ring && sum(chosen) % 2 === 1) return;
      const cost = costOf(chosen, question);
      const tie = best && Math.abs(cost - best.cost) < 1e-12;
      if (!best || (tie ? sum(chosen) > sum(best.halfRepeats) : cost < best.cost)) {
        best = { halfRepeats: [...chosen], cost };
      }
      return;
    }
    for (let h = step; h <= most(question.lengths[i]); h += step) visit(i + 1, [...chosen, h]);
  };
  visit(0, []);
  return best!;
}

const questions = fc.record({
  lengths: fc.array(fc.double({ min: 3, max: 24, noNaN: true }), { minLength: 1, maxLength: 4 }),
  wanted: fc.double({ min: 4, max: 12, noNaN: true }),
  halves: fc.boolean(),
  ring: fc.boolean(),
});

describe('how many repeats a line gets', () => {
  test('no other counts fit a line with corners better (exhaustive search)', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const found = bestCounts(question);
        const best = exhaustive(question);
        expect(found.cost).toBeCloseTo(best.cost, 10);
        expect(costOf(found.halfRepeats, question)).toBeCloseTo(best.cost, 10);
      }),
      { numRuns: 1500 },
    );
  });

  test('a ring always takes a whole number of repeats', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { halfRepeats } = bestCounts({ ...question, ring: true });
        expect(halfRepeats.reduce((a, b) => a + b, 0) % 2).toBe(0);
      }),
    );
  });

  test('a stitch that allows no halves gets whole repeats on every side', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { halfRepeats } = bestCounts({ ...question, halves: false });
        expect(halfRepeats.every((h) => h % 2 === 0 && h > 0)).toBe(true);
      }),
    );
  });

  test('a length between two counts goes to more repeats', () => {
    // Three repeats of length p * sqrt(3/2) ... two and three miss by the same ratio when L = p * sqrt(6).
    const { halfRepeats } = bestCounts({
      lengths: [6 * Math.sqrt(6)],
      wanted: 6,
      halves: false,
      ring: false,
    });
    expect(halfRepeats).toEqual([6]);
  });

  test('the sides of a regular polygon get equal counts', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 9 }),
        fc.double({ min: 10, max: 80, noNaN: true }),
        fc.double({ min: 4, max: 9, noNaN: true }),
        (sides, side, wanted) => {
          const { halfRepeats } = bestCounts({
            lengths: new Array(sides).fill(side),
            wanted,
            halves: false,
            ring: true,
          });
          expect(new Set(halfRepeats).size).toBe(1);
        },
      ),
    );
  });
});
