import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { improved } from '../../src/harmony/anneal-threads.js';
import { assignThreads } from '../../src/harmony/assign-threads.js';
import { type Assignment, priceOf, usesOf } from '../../src/harmony/assignment.js';

/** Small puzzles with prices in tenths, some with limits, things that are sewn in several stops. */
const puzzles = (mostThings: number, mostThreads: number) =>
  fc
    .tuple(fc.integer({ min: 1, max: mostThings }), fc.integer({ min: 1, max: mostThreads }))
    .chain(([things, threads]) => {
      const tenths = fc.integer({ min: 0, max: 20 }).map((n) => n / 10);
      const thing = fc.integer({ min: 0, max: things - 1 });
      return fc.record<Assignment>({
        own: fc.array(fc.array(tenths, { minLength: threads, maxLength: threads }), {
          minLength: things,
          maxLength: things,
        }),
        pairs: fc
          .array(fc.record({ a: thing, b: thing, weight: tenths }), { maxLength: 8 })
          .map((list) => list.filter(({ a, b }) => a !== b)),
        clash: fc
          .array(fc.array(tenths, { minLength: threads, maxLength: threads }), {
            minLength: threads,
            maxLength: threads,
          })
          .map((rows) => rows.map((row, i) => row.map((_, j) => rows[Math.min(i, j)][Math.max(i, j)]))),
        order: fc
          .array(thing, { maxLength: 4 })
          .map((more) => [...Array.from({ length: things }, (_, i) => i), ...more]),
        perThread: fc.constantFrom(0, 0.15),
        perChange: fc.constantFrom(0, 0.05),
        mostThreads: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
        mostChanges: fc.option(fc.integer({ min: 0, max: 4 }), { nil: undefined }),
      });
    });

/** The least price by trying every assignment there is. */
function leastOfAll(puzzle: Assignment): number {
  const [things, threads] = [puzzle.own.length, puzzle.own[0].length];
  let least = Infinity;
  for (let n = 0; n < threads ** things; n++) {
    const chosen = Array.from({ length: things }, (_, i) => Math.floor(n / threads ** i) % threads);
    least = Math.min(least, priceOf(puzzle, chosen));
  }
  return least;
}

describe('threads for a block', () => {
  it('are the best there are, by trying all of them', () => {
    fc.assert(
      fc.property(puzzles(6, 4), (puzzle) => {
        const { price, isBest } = assignThreads(puzzle, 1);
        return isBest && Math.abs(price - leastOfAll(puzzle)) < 1e-9;
      }),
      { numRuns: 60 },
    );
  });

  it('come from the search that only improves within a twentieth of the best, and mostly on it', () => {
    const misses: number[] = [];
    fc.assert(
      fc.property(puzzles(7, 4), (puzzle) => {
        const least = leastOfAll(puzzle);
        misses.push(priceOf(puzzle, improved(puzzle, 1)) - least);
        return misses.at(-1)! <= 0.05 * least + 0.1;
      }),
      { numRuns: 40 },
    );
    expect(misses.filter((miss) => miss > 1e-9).length).toBeLessThanOrEqual(4);
  });

  it('that are gone on from get no worse', () => {
    fc.assert(
      fc.property(puzzles(7, 4), fc.integer({ min: 0, max: 99 }), (puzzle, seed) => {
        const start = puzzle.own.map(() => seed % puzzle.own[0].length);
        return priceOf(puzzle, improved(puzzle, 1, start)) <= priceOf(puzzle, start);
      }),
      { numRuns: 20 },
    );
  });

  it('keep within a palette and a number of changes', () => {
    fc.assert(
      fc.property(puzzles(12, 8), (puzzle) => {
        const { threads, changes } = usesOf(puzzle, assignThreads(puzzle, 1, { most: 20_000 }).chosen);
        return threads <= (puzzle.mostThreads ?? 99) && changes <= (puzzle.mostChanges ?? 99);
      }),
      { numRuns: 15 },
    );
  });

  it('are no worse when more threads or changes are allowed', () => {
    fc.assert(
      fc.property(puzzles(6, 4), (puzzle) => {
        const freer = { ...puzzle, mostThreads: undefined, mostChanges: undefined };
        return assignThreads(freer, 1).price <= assignThreads(puzzle, 1).price + 1e-9;
      }),
      { numRuns: 30 },
    );
  });

  it('says when not every assignment could be ruled out', () => {
    const own = Array.from({ length: 30 }, (_, i) =>
      Array.from({ length: 12 }, (_, t) => ((i * 7 + t * 5) % 11) / 10),
    );
    const clash = Array.from({ length: 12 }, (_, a) =>
      Array.from({ length: 12 }, (_, b) => (a === b ? 1 : 0)),
    );
    const pairs = own.flatMap((_, a) =>
      own.flatMap((_, b) => (a < b && (a + b) % 3 === 0 ? [{ a, b, weight: 1 }] : [])),
    );
    const puzzle = { own, clash, pairs, order: [...own.keys()], perThread: 0.15, perChange: 0.05 };
    const found = assignThreads(puzzle, 1, { most: 1000 });
    expect(found.isBest).toBe(false);
    expect(found.price).toBe(priceOf(puzzle, found.chosen));
  });
});
