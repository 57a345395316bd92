import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestCounts, type CountQuestion, costOf } from '../../src/fit/counts.js';

const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);

/** Every way to fill the stretches, tried one by one: the answer to hold the program against. */
function exhaustive(question: CountQuestion): { halfRepeats: number[]; cost: number } | null {
  const { lengths, wanted, steps, ring, shares } = question;
  let best: { halfRepeats: number[]; cost: number } | null = null;
  const visit = (i: number, chosen: number[]) => {
    if (i === lengths.length) {
      if (ring !== null && sum(chosen) % ring !== 0) return;
      const cost = costOf(chosen, question);
      const tie = best && Math.abs(cost - best.cost) < 1e-12;
      if (!best || (tie ? sum(chosen) > sum(best.halfRepeats) : cost < best.cost)) {
        best = { halfRepeats: [...chosen], cost };
      }
      return;
    }
    for (let h = steps[i]; ; h += steps[i]) {
      const share = (2 * lengths[i]) / h / wanted;
      if (share < shares[0]) return;
      if (share <= shares[1]) visit(i + 1, [...chosen, h]);
    }
  };
  visit(0, []);
  return best;
}

const shares = fc.constantFrom([0.8, 1.25] as const, [0.5, 2] as const, [0.34, 3] as const);
const questions = fc
  .array(
    fc.record({
      length: fc.double({ min: 3, max: 24, noNaN: true }),
      step: fc.constantFrom(1, 2, 4),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .chain((stretches) =>
    fc.record({
      lengths: fc.constant(stretches.map(({ length }) => length)),
      // mostly one for all, as rows in step give; now and then a stretch that takes no more than its own
      steps: fc.oneof(
        fc.constantFrom(1, 2, 4).map((step) => stretches.map(() => step)),
        fc.constant(stretches.map(({ step }) => step)),
      ),
      wanted: fc.double({ min: 4, max: 12, noNaN: true }),
      ring: fc.constantFrom(null, 2, 4),
      shares,
    }),
  );

describe('how many repeats a line gets', () => {
  test('no other counts fit a line with corners better, and none are found only where there are none (exhaustive search)', () => {
    const wrong: { question: CountQuestion; found: unknown; best: unknown }[] = [];
    let unfilled = 0;
    fc.assert(
      fc.property(questions, (question) => {
        const found = bestCounts(question);
        const best = exhaustive(question);
        if (!best) unfilled++;
        const isSame = found && best ? Math.abs(costOf(found, question) - best.cost) < 1e-9 : found === best;
        const isAllowed =
          !found ||
          (found.every((h, i) => h > 0 && h % question.steps[i] === 0) &&
            (question.ring === null || sum(found) % question.ring === 0));
        if (!isSame || !isAllowed) wrong.push({ question, found, best });
      }),
      { numRuns: 6000 },
    );
    expect(wrong).toEqual([]);
    // both kinds of question came up
    expect(unfilled).toBeGreaterThan(100);
    expect(unfilled).toBeLessThan(5000);
  });

  test('a length between two counts goes to more repeats', () => {
    // Two and three repeats miss by the same ratio when L = p * sqrt(6).
    expect(
      bestCounts({ lengths: [6 * Math.sqrt(6)], wanted: 6, steps: [2], ring: null, shares: [0.5, 2] }),
    ).toEqual([6]);
  });

  test('the sides of a regular polygon get equal counts', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 9 }),
        fc.double({ min: 10, max: 80, noNaN: true }),
        fc.double({ min: 4, max: 9, noNaN: true }),
        (sides, side, wanted) => {
          const found = bestCounts({
            lengths: new Array(sides).fill(side),
            wanted,
            steps: new Array(sides).fill(2),
            ring: 2,
            shares: [0.25, 4],
          });
          expect(new Set(found).size).toBe(1);
        },
      ),
    );
  });

  test('five sides that would each hold an odd number of halves end on the hand they did not start with', () => {
    // 2.5 repeats of 4 mm on every side of 10 mm, 12.5 all round: one side takes half a repeat more.
    const sides = [10, 10, 10, 10, 10];
    const found = bestCounts({
      lengths: sides,
      wanted: 4,
      steps: sides.map(() => 1),
      ring: 2,
      shares: [0.8, 1.25],
    });
    expect([...found!].sort()).toEqual([5, 5, 5, 5, 6]);
  });
});
