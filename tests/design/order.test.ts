import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewestBroken } from '../../src/design/fewest-broken.js';
import { sewingOrder, type Tucked } from '../../src/design/order.js';

const tucked = (seam: number | 'outline', ...tucksUnder: (number | 'outline')[]): Tucked => ({
  treatment: seam === 'outline' ? 0 : seam + 100,
  seam,
  tucksUnder,
});

/** Small networks: seams 1 to n, each with the seams it tucks under. */
const network = (most: number) =>
  fc.integer({ min: 1, max: most }).chain((n) =>
    fc
      .array(fc.uniqueArray(fc.integer({ min: 1, max: n }), { maxLength: 2 }), {
        minLength: n,
        maxLength: n,
      })
      .map((under) => under.map((seams, i) => tucked(i + 1, ...seams))),
  );

/** How many tucks fail when seams are sewn in this order. */
function failing(order: readonly number[], treatments: readonly Tucked[]): number {
  const at = new Map(order.map((treatment, i) => [treatment, i]));
  return treatments
    .flatMap(({ treatment, tucksUnder }) => tucksUnder.map((seam) => [treatment, Number(seam) + 100]))
    .filter(([lower, upper]) => at.get(lower)! >= at.get(upper)!).length;
}

function permutations(items: readonly number[]): number[][] {
  if (items.length <= 1) return [[...items]];
  return items.flatMap((item, i) => permutations(items.toSpliced(i, 1)).map((rest) => [item, ...rest]));
}

describe('the order of sewing', () => {
  it('is by seam number where nothing tucks under anything, the outline last', () => {
    const { order, broken } = sewingOrder([tucked('outline'), tucked(3), tucked(1), tucked(2)]);
    expect(order).toEqual([101, 102, 103, 0]);
    expect(broken).toEqual([]);
  });

  it('puts a butting treatment before the one it tucks under', () => {
    expect(sewingOrder([tucked(1), tucked(2, 1), tucked(3, 2)]).order).toEqual([103, 102, 101]);
    expect(sewingOrder([tucked(1), tucked(2), tucked(5, 2)]).order).toEqual([101, 105, 102]);
  });

  it('does not wait for seams that are left bare', () => {
    expect(sewingOrder([tucked(2, 1, 7)])).toEqual({ order: [102], broken: [] });
  });

  it('of a pinwheel breaks one tuck and names it', () => {
    const { order, broken } = sewingOrder([tucked(1, 2), tucked(2, 3), tucked(3, 4), tucked(4, 1)]);
    expect(broken).toHaveLength(1);
    expect(failing(order, [tucked(1, 2), tucked(2, 3), tucked(3, 4), tucked(4, 1)])).toBe(1);
    expect(broken[0]).toEqual({ treatment: 104, seam: 4, under: 1 });
  });

  it('cannot lay a seam under itself', () => {
    expect(sewingOrder([tucked(6, 6)])).toEqual({
      order: [106],
      broken: [{ treatment: 106, seam: 6, under: 6 }],
    });
  });

  it('breaks as few tucks as any order would, and names exactly those that fail', () => {
    fc.assert(
      fc.property(network(6), (treatments) => {
        const { order, broken } = sewingOrder(treatments);
        const all = treatments.map(({ treatment }) => treatment);
        expect([...order].sort()).toEqual([...all].sort());
        expect(broken).toHaveLength(failing(order, treatments));
        const least = permutations(all).reduce((min, other) => Math.min(min, failing(other, treatments)), 99);
        expect(broken).toHaveLength(least);
      }),
      { numRuns: 200 },
    );
  });

  it('without the broken tucks is in order', () => {
    fc.assert(
      fc.property(network(40), (treatments) => {
        const { order, broken } = sewingOrder(treatments);
        const kept = treatments.map((one) => ({
          ...one,
          tucksUnder: one.tucksUnder.filter(
            (under) => !broken.some((b) => b.treatment === one.treatment && b.under === under),
          ),
        }));
        expect(failing(order, kept)).toBe(0);
        expect(sewingOrder(kept).broken).toEqual([]);
      }),
    );
  });

  it('does not depend on the order in which treatments are given', () => {
    const shuffled = network(12).chain((treatments) =>
      fc.tuple(fc.constant(treatments), fc.shuffledSubarray(treatments, { minLength: treatments.length })),
    );
    fc.assert(
      fc.property(shuffled, ([treatments, other]) => {
        expect(sewingOrder(other)).toEqual(sewingOrder(treatments));
      }),
    );
  });

  it('of a hundred thousand seams in a row, each under the next, comes without delay', () => {
    const row = Array.from({ length: 100_000 }, (_, i) => tucked(i + 1, i));
    const { order } = sewingOrder(row);
    expect(order[0]).toBe(100_100);
    expect(order[99_999]).toBe(101);
  });
});

describe('large rings, placed without looking at every order', () => {
  it('break at most one tuck more than the fewest on small networks, and hardly ever that', () => {
    let worse = 0;
    let all = 0;
    fc.assert(
      fc.property(network(9), (treatments) => {
        const earlier = treatments.map((_, i) =>
          treatments.flatMap(({ tucksUnder }, j) => (j !== i && tucksUnder.includes(i + 1) ? [j] : [])),
        );
        const members = treatments.map((_, i) => i);
        const cost = (order: number[]) => {
          const at = new Map(order.map((i, place) => [i, place]));
          return earlier.flatMap((before, i) => before.filter((j) => at.get(j)! > at.get(i)!)).length;
        };
        const best = cost(fewestBroken(members, earlier));
        const near = cost(fewestBroken(members, earlier, 1));
        expect(near).toBeLessThanOrEqual(best + 1);
        all++;
        if (near > best) worse++;
      }),
      { numRuns: 400, seed: 7 },
    );
    expect(worse / all).toBeLessThan(0.05);
  });

  it('of two thousand seams come without delay', () => {
    const ring = Array.from({ length: 2000 }, (_, i) =>
      tucked(i + 1, ((i + 1) % 2000) + 1, ((i + 700) % 2000) + 1),
    );
    const { broken } = sewingOrder(ring);
    expect(broken.length).toBeGreaterThan(0);
    expect(broken.length).toBeLessThan(1000);
  });
});
