import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../src/fit/fit.js';
import type { Ends } from '../../../src/needle/graph/ends.js';
import { Known, Scratch } from '../../../src/needle/graph/known.js';
import { layOut } from '../../../src/needle/graph/lay-out.js';
import { partsOf } from '../../../src/needle/graph/part.js';
import { leastPasses } from '../../../src/needle/graph/passes.js';
import { measureLegs } from '../../../src/needle/legs.js';
import { ChainMaker, herringbone, ladder } from '../chains.js';
import { leastCost } from './least-cost.js';

function layoutOf(chain: Chain) {
  const known = new Known();
  const [part] = partsOf(chain);
  const scratch = new Scratch(chain.nodes.length >> 1);
  return { layout: layOut(chain, part, measureLegs(chain).length, known, scratch), known };
}

function costOf(chain: Chain, ends: Ends): number {
  const { layout, known } = layoutOf(chain);
  return leastCost(layout, ends, known);
}

/** Tries every way of sewing the legs more often than asked: the definition itself, with none of the code under test. */
function bruteForce(chain: Chain, ends: Ends): number {
  const { from, to, passes, kind, unit } = chain;
  // the code under test counts in whole micrometers
  const length = measureLegs(chain).length.map((mm) => Math.round(mm * 1000) / 1000);
  const nodes = chain.nodes.length >> 1;
  const price = Array.from(kind, (k, leg) => length[leg] * (k === 'under' ? 1 : 3));
  const last = Math.max(...unit);
  const within = (node: number, u: number) =>
    unit.some((own, leg) => own === u && (from[leg] === node || to[leg] === node));
  const counts = Array.from(passes);
  let best = Number.POSITIVE_INFINITY;
  const check = (cost: number) => {
    const degree = new Array<number>(nodes).fill(0);
    const parent = Array.from({ length: nodes }, (_, i) => i);
    const find = (n: number): number => (parent[n] === n ? n : find(parent[n]));
    counts.forEach((count, leg) => {
      if (count === 0) return;
      degree[from[leg]] += count;
      degree[to[leg]] += count;
      parent[find(from[leg])] = find(to[leg]);
    });
    const sewn = degree.flatMap((d, node) => (d > 0 ? [node] : []));
    if (sewn.some((node) => find(node) !== find(sewn[0]))) return;
    const odd = sewn.filter((node) => degree[node] % 2 === 1);
    if (odd.length > 2 || (ends === 'closed' && odd.length > 0)) return;
    if (ends === 'through') {
      const [a, b] = odd.length === 2 ? odd : [-1, -1];
      const apart = (within(a, 0) && within(b, last)) || (within(b, 0) && within(a, last));
      const together = odd.length === 0 && degree.some((_, node) => within(node, 0) && within(node, last));
      if (!apart && !together) return;
    }
    best = Math.min(best, cost);
  };
  const descend = (leg: number, cost: number) => {
    if (cost >= best) return;
    if (leg === counts.length) {
      check(cost);
      return;
    }
    for (let more = 0; more <= (passes[leg] > 0 ? 1 : 2); more++) {
      counts[leg] = passes[leg] + more;
      descend(leg + 1, cost + more * price[leg]);
    }
    counts[leg] = passes[leg];
  };
  descend(0, 0);
  return best;
}

/** A connected graph in one unit: a random tree and some more legs. */
const smallGraph = fc
  .record({
    tree: fc.array(fc.nat(100), { minLength: 2, maxLength: 5 }),
    more: fc.array(fc.tuple(fc.nat(100), fc.nat(100)), { maxLength: 4 }),
    passes: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 10, maxLength: 10 }),
    spots: fc.array(fc.tuple(fc.nat(900), fc.nat(900)), { minLength: 7, maxLength: 7 }),
  })
  .map(({ tree, more, passes, spots }) => {
    const spot = (i: number): [number, number] => [spots[i][0] / 100 + 10 * i, spots[i][1] / 100];
    const pairs = tree.map((back, i) => [back % (i + 1), i + 1] as const);
    for (const [a, b] of more) {
      const n = tree.length + 1;
      if (a % n !== b % n) pairs.push([a % n, b % n]);
    }
    const maker = new ChainMaker();
    pairs.forEach(([a, b], leg) => {
      const count = leg === 0 ? Math.max(1, passes[leg]) : passes[leg];
      maker.leg(0, leg, count === 0 ? 'under' : 'straight', count, [spot(a), spot(b)]);
    });
    return maker.chain();
  });

/** Repeats between two rails of shared points, with a free point in each; legs chosen at random, others left out. */
const twoPointChain = fc
  .array(
    fc.record({
      passes: fc.array(fc.integer({ min: -1, max: 2 }), { minLength: 7, maxLength: 7 }),
      lean: fc.integer({ min: 5, max: 40 }),
    }),
    { minLength: 2, maxLength: 3 },
  )
  .map((units) => {
    const maker = new ChainMaker();
    let x = 0;
    units.forEach(({ passes, lean }, i) => {
      const next = x + lean / 10 + 1;
      const mid: [number, number] = [x + 0.7, 2.2];
      const ends: [[number, number], [number, number]][] = [
        [
          [x, 0],
          [x, 4],
        ],
        [[x, 0], mid],
        [mid, [next, 4]],
        [
          [x, 4],
          [next, 4],
        ],
        [
          [x, 0],
          [next, 0],
        ],
        [[x, 4], mid],
        [mid, [next, 0]],
      ];
      ends.forEach((path, leg) => {
        // the lower rail keeps the chain in one piece
        const count = leg === 4 ? Math.max(0, passes[leg]) : passes[leg];
        if (count >= 0) maker.leg(i, leg, count === 0 ? 'under' : 'straight', count, path);
      });
      x = next;
    });
    return maker
      .leg(units.length - 1, 9, 'straight', 1, [
        [x, 0],
        [x, 4],
      ])
      .chain();
  })
  .filter((chain) => partsOf(chain).length === 1 && chain.from.length <= 16);

describe('the passes added so that one trail can sew all legs', () => {
  it.each(['anywhere', 'closed', 'through'] as const)(
    'cost as little as trying everything finds, on small graphs (%s)',
    (ends) => {
      fc.assert(
        fc.property(smallGraph, (chain) => {
          const best = bruteForce(chain, ends);
          expect(costOf(chain, ends)).toBeCloseTo(best, 6);
          const { layout, known } = layoutOf(chain);
          expect(leastPasses(layout, ends, false, known)!.cost).toBeCloseTo(best, 6);
        }),
        { numRuns: 150 },
      );
    },
  );

  it.each(['anywhere', 'closed', 'through'] as const)(
    'cost as little as trying everything finds, on repeats that share two points (%s)',
    (ends) => {
      fc.assert(
        fc.property(twoPointChain, (chain) => {
          expect(costOf(chain, ends)).toBeCloseTo(bruteForce(chain, ends), 6);
        }),
        { numRuns: 60 },
      );
    },
  );

  it('double four edges of the 3 by 3 grid, and two of K4, for a closed walk (Kwan 1960; degrees by hand)', () => {
    const grid = new ChainMaker();
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 2; j++) {
        grid
          .leg(0, 0, 'straight', 1, [
            [j, i],
            [j + 1, i],
          ])
          .leg(0, 0, 'straight', 1, [
            [i, j],
            [i, j + 1],
          ]);
      }
    }
    expect(costOf(grid.chain(), 'closed')).toBeCloseTo(3 * 4, 9);
    // with free ends only two of the four odd points must be joined, two edges apart
    expect(costOf(grid.chain(), 'anywhere')).toBeCloseTo(3 * 2, 9);
    // unit K4: corners of a tetrahedron cannot lie flat with equal edges, so under-legs of equal path length stand in
    const k4 = new ChainMaker();
    const corners: [number, number][] = [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ];
    for (let a = 0; a < 4; a++)
      for (let b = a + 1; b < 4; b++) k4.leg(0, 0, 'under', 1, [corners[a], [9, 9], corners[b]]);
    const chain = k4.chain();
    const { layout, known } = layoutOf(chain);
    const unit = {
      ...layout,
      lengths: new Map([...layout.lengths].map(([id, of]) => [id, of.map(() => 1)])),
    };
    expect(leastCost(unit, 'closed', known)).toBe(2);
    expect(leastCost(unit, 'anywhere', known)).toBe(1);
  });

  it('leave out under-legs that nothing needs, and sew those that join what is seen', () => {
    const maker = new ChainMaker()
      .leg(0, 0, 'straight', 2, [
        [0, 0],
        [4, 0],
      ])
      .leg(0, 1, 'under', 0, [
        [4, 0],
        [5, 0],
      ])
      .leg(0, 1, 'under', 0, [
        [0, 0],
        [5, 0.5],
      ])
      .leg(0, 2, 'straight', 2, [
        [5, 0],
        [9, 0],
      ])
      .leg(0, 3, 'under', 0, [
        [9, 0],
        [9, 5],
      ]);
    const { layout, known } = layoutOf(maker.chain());
    const passes = leastPasses(layout, 'anywhere', false, known)!;
    expect(Array.from(passes.patterns[passes.of[0]])).toEqual([2, 1, 0, 2, 0]);
  });

  it('are the same in every repeat when even repeats are asked, though that costs thread', () => {
    const { layout, known } = layoutOf(ladder(9));
    const even = leastPasses(layout, 'through', true, known)!;
    const least = leastPasses(layout, 'through', false, known)!;
    expect(new Set(even.of).size).toBe(1);
    expect(new Set(least.of).size).toBeGreaterThan(1);
    expect(even.cost).toBeGreaterThan(least.cost);
    expect(least.cost).toBeGreaterThanOrEqual(costOf(ladder(9), 'anywhere') - 1e-9);
  });

  it('cost the same for a long chain as by adding up its repeats', () => {
    // one pick-up between every two diagonals: 4 mm under the cloth, at price 1
    for (const units of [2, 7, 400])
      expect(costOf(herringbone(units), 'anywhere')).toBeCloseTo(4 * (2 * units - 1), 6);
  });
});
