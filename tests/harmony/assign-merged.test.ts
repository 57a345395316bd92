import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewStops } from '../../src/design/few-stops.js';
import { assignAsMerged } from '../../src/harmony/assign-merged.js';
import { type Assignment, priceOf, usesOf } from '../../src/harmony/assignment.js';

type Puzzle = Omit<Assignment, 'order'>;
interface Block {
  readonly puzzle: Puzzle;
  /** for each thing those that have to be sewn before it */
  readonly earlier: readonly (readonly number[])[];
}

const price = fc.integer({ min: 0, max: 20 }).map((tenths) => tenths / 10);
/** Up to five treatments that lie over each other as they please, and up to three threads for them. */
const blocks = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 3 }))
  .chain(([things, threads]) =>
    fc.record({
      own: fc.array(fc.array(price, { minLength: threads, maxLength: threads }), {
        minLength: things,
        maxLength: things,
      }),
      side: fc.array(price, { minLength: 9, maxLength: 9 }),
      over: fc.array(fc.boolean(), { minLength: 25, maxLength: 25 }),
      mostThreads: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
      mostChanges: fc.option(fc.integer({ min: 0, max: 4 }), { nil: undefined }),
    }),
  )
  .map(({ own, side, over, mostThreads, mostChanges }): Block => {
    const threads = own[0].map((_, t) => t);
    return {
      puzzle: {
        own,
        pairs: own.flatMap((_, b) => (b > 0 ? [{ a: b - 1, b, weight: 0.5 }] : [])),
        clash: threads.map((a) => threads.map((b) => side[3 * Math.min(a, b) + Math.max(a, b)])),
        perThread: 0.3,
        perChange: 0.5,
        mostThreads,
        mostChanges,
      },
      earlier: own.map((_, i) => own.flatMap((_, j) => (j < i && over[5 * i + j] ? [j] : []))),
    };
  });

/** The things in as few stops as their threads and what lies over what allow. */
const sewn = (earlier: Block['earlier'], chosen: readonly number[] | null): number[] =>
  chosen === null ? earlier.map((_, i) => i) : fewStops(chosen, earlier).flat();

/** What an assignment costs as it is sewn. */
const truePrice = ({ puzzle, earlier }: Block, chosen: readonly number[]): number =>
  priceOf({ ...puzzle, order: sewn(earlier, chosen) }, chosen);

/** Every assignment there is. */
function everyOne({ own }: Puzzle): number[][] {
  return own.reduce<number[][]>(
    (all, threads) => all.flatMap((chosen) => threads.map((_, t) => [...chosen, t])),
    [[]],
  );
}
const leastPrice = (block: Block) =>
  Math.min(...everyOne(block.puzzle).map((chosen) => truePrice(block, chosen)));
const assigned = (block: Block) =>
  assignAsMerged(block.puzzle, 'thread', 1, (chosen) => sewn(block.earlier, chosen));

describe('threads for color stops that are merged by thread', () => {
  it('cost what they cost as sewn, keep within the limits, and are the best where they are said to be', () => {
    fc.assert(
      fc.property(blocks, (block) => {
        const { chosen, order, price: told, isBest } = assigned(block);
        const { threads, changes } = usesOf({ order }, chosen);
        const least = leastPrice(block);
        return (
          Math.abs(told - truePrice(block, chosen)) < 1e-9 &&
          threads <= (block.puzzle.mostThreads ?? 9) &&
          changes <= (block.puzzle.mostChanges ?? 9) &&
          told >= least - 1e-9 &&
          (!isBest || told <= least + 1e-9)
        );
      }),
      { numRuns: 80 },
    );
  }, 60_000);

  it('are nearly always the best of all there are, and never dearer than if each row were a stop', () => {
    const cases = fc.sample(blocks, { numRuns: 80, seed: 5 });
    const found = cases.map((block) => assigned(block).price);
    const best = cases.map(leastPrice);
    const asRows = cases.map((block) => {
      const row = assignAsMerged(block.puzzle, 'row', 1, () => sewn(block.earlier, null));
      return row.price;
    });
    expect(found.filter((price, i) => price > asRows[i] + 1e-9)).toEqual([]);
    expect(found.filter((price, i) => price > best[i] + 1e-9).length).toBeLessThan(0.05 * cases.length);
  }, 60_000);

  it('count no change where the row order would: two of three in one thread are sewn together', () => {
    const puzzle: Puzzle = {
      own: [
        [0, 9],
        [9, 0],
        [0, 9],
      ],
      pairs: [],
      clash: [
        [0, 0],
        [0, 0],
      ],
      perThread: 0.1,
      perChange: 1,
      mostChanges: 1,
    };
    const free = assigned({ puzzle, earlier: [[], [], []] });
    expect([free.chosen, free.isBest]).toEqual([[0, 1, 0], true]);
    expect(usesOf(free, free.chosen).changes).toBe(1);
    // where the second lies between the others, one of the three has to give way
    const bound = assigned({ puzzle, earlier: [[], [0], [1]] });
    expect(usesOf(bound, bound.chosen).changes).toBeLessThanOrEqual(1);
    expect(bound.chosen).not.toEqual([0, 1, 0]);
  });
});

describe('threads for one color stop', () => {
  it('are one thread, the best single one', () => {
    fc.assert(
      fc.property(blocks, (block) => {
        const { chosen } = assignAsMerged(block.puzzle, 'all', 1, () => sewn(block.earlier, null));
        const singles = block.puzzle.own[0].map((_, t) =>
          truePrice(
            block,
            chosen.map(() => t),
          ),
        );
        return new Set(chosen).size === 1 && truePrice(block, chosen) <= Math.min(...singles) + 1e-9;
      }),
      { numRuns: 30 },
    );
  }, 60_000);
});
