import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HAND_THREADS } from '../../src/formats/dressing.js';
import { craftFor } from '../../src/needle/craft.js';
import { asHeavyAs, inPasses, isLike } from '../../src/needle/heaviness.js';
import { sewChain } from '../../src/needle/sew-chain.js';
import { bow, ChainMaker } from './chains.js';

/** Common practice: how wide threads of a hand lie, mm. */
const LAID = { 'one-strand': 0.35, 'two-strands': 0.55, 'pearl-8': 0.6, 'pearl-5': 0.85 };
const hands = fc.constantFrom(...HAND_THREADS);
const weights = fc.constantFrom('No. 60', 'No. 50', 'No. 40', 'No. 30', 'No. 12');

describe('as heavy as a thread of a hand', () => {
  // By hand: the thread's own width (0.25, 0.4, 0.45, 0.65 mm, common practice), and 0.2 to 0.25 mm for each further pass.
  test.each([
    // 0.25, 0.45 to 0.5, 0.65 to 0.75, 0.85 to 1
    ['No. 60', 'one-strand', 1, 0.25],
    ['No. 60', 'two-strands', 2, 0.5],
    ['No. 60', 'pearl-8', 3, 0.65],
    ['No. 60', 'pearl-5', 4, 0.85],
    // 0.4, 0.6 to 0.65, 0.8 to 0.9
    ['No. 40', 'one-strand', 1, 0.4],
    ['No. 40', 'two-strands', 2, 0.6],
    ['No. 40', 'pearl-8', 2, 0.6],
    ['No. 40', 'pearl-5', 3, 0.85],
    // 0.45, 0.65 to 0.7, 0.85 to 0.95: 0.55 is as far from one pass as from two, and one takes less thread
    ['No. 30', 'one-strand', 1, 0.45],
    ['No. 30', 'two-strands', 1, 0.45],
    ['No. 30', 'pearl-8', 2, 0.65],
    ['No. 30', 'pearl-5', 3, 0.85],
    // 0.65, 0.85 to 0.9
    ['No. 12', 'one-strand', 1, 0.65],
    ['No. 12', 'two-strands', 1, 0.65],
    ['No. 12', 'pearl-8', 1, 0.65],
    ['No. 12', 'pearl-5', 2, 0.85],
  ] as const)('%s as heavy as %s is sewn in %i passes, %f mm wide', (weight, hand, passes, width) => {
    const heaviness = asHeavyAs(hand, weight);
    expect(heaviness.passes).toBe(passes);
    expect(heaviness.width).toBeCloseTo(width, 9);
  });

  test('is what three passes of No. 40 are, as is usual: pearl No. 5', () => {
    expect(asHeavyAs('pearl-5', 'No. 40').passes).toBe(3);
  });

  test('looks like it in all threads but one: nothing of No. 12 is as fine as one strand', () => {
    const unlike = ['No. 60', 'No. 40', 'No. 30', 'No. 12'].flatMap((weight) =>
      HAND_THREADS.filter((hand) => !isLike(hand, asHeavyAs(hand, weight))).map((hand) => [weight, hand]),
    );
    expect(unlike).toEqual([['No. 12', 'one-strand']]);
  });

  test('is as near as any number of passes comes, 0.2 to 0.25 mm apart', () => {
    fc.assert(
      fc.property(hands, weights, fc.integer({ min: 1, max: 20 }), (hand, weight, passes) => {
        const chosen = asHeavyAs(hand, weight);
        expect(chosen.spread).toBeGreaterThanOrEqual(0.2);
        expect(chosen.spread).toBeLessThanOrEqual(0.25);
        const off = ({ width }: { width: number }) => Math.abs(width - LAID[hand]);
        expect(off(chosen)).toBeLessThanOrEqual(off(inPasses(hand, weight, passes)) + 1e-9);
      }),
    );
  });

  test('is so wide across a sewn leg as it says', () => {
    fc.assert(
      fc.property(
        hands,
        weights,
        fc.double({ min: 8, max: 14, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (hand, weight, length, rise) => {
          const { passes, spread, width } = asHeavyAs(hand, weight);
          const chain = new ChainMaker()
            .leg(0, 0, 'curve', passes, bow([0, 0], [length, 0], rise, 41))
            .chain();
          const craft = craftFor(weight, { spread });
          const { xy } = sewChain(chain, craft).runs;
          expect(acrossMiddle(xy, length / 2) + craft.threadWidth).toBeCloseTo(width, 2);
        },
      ),
    );
  });
});

/** From the lowest to the highest stitch that crosses the upright at x, mm. */
function acrossMiddle(xy: Float64Array, x: number): number {
  const heights: number[] = [];
  for (let i = 2; i < xy.length; i += 2) {
    const [x0, y0, x1, y1] = xy.subarray(i - 2, i + 2);
    if ((x0 - x) * (x1 - x) <= 0 && x0 !== x1) heights.push(y0 + ((y1 - y0) * (x - x0)) / (x1 - x0));
  }
  return Math.max(...heights) - Math.min(...heights);
}
