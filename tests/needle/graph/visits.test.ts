import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../src/fit/fit.js';
import { shortJumps, type Visit } from '../../../src/needle/graph/visits.js';
import { routesOf } from '../../../src/needle/sew-chain.js';
import { ChainMaker } from '../chains.js';

type Spot = readonly [number, number];

const spot = fc.tuple(fc.nat(400), fc.nat(400)).map(([x, y]): Spot => [x / 10, y / 10]);

/** Parts of three legs each between spots of their own; ways are some of the legs in some order. */
const visits = fc
  .array(
    fc.record({
      spots: fc.array(spot, { minLength: 4, maxLength: 4 }),
      ways: fc.array(fc.array(fc.nat(5), { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((parts): { chain: Chain; visits: Visit[] } => {
    const maker = new ChainMaker();
    parts.forEach(({ spots }, part) => {
      for (let i = 0; i < 3; i++) maker.leg(part, i, 'straight', 1, [spots[i], spots[i + 1]]);
    });
    return {
      chain: maker.chain(),
      visits: parts.map(({ ways }, part) => ({
        legs: Int32Array.from([3 * part, 3 * part + 1, 3 * part + 2]),
        ways: ways.map((way) => Int32Array.from(way)),
      })),
    };
  });

/** Where a trail of chain legs begins and ends. */
function ends(chain: Chain, trail: ArrayLike<number>): [Spot, Spot] {
  const at = (step: number, end: boolean): Spot => {
    const node = (step % 2 === 1) === end ? chain.from[step >> 1] : chain.to[step >> 1];
    return [chain.nodes[2 * node], chain.nodes[2 * node + 1]];
  };
  return [at(trail[0], false), at(trail[trail.length - 1], true)];
}

function jumps(chain: Chain, trails: readonly ArrayLike<number>[]): number {
  let sum = 0;
  for (let i = 1; i < trails.length; i++) {
    const [, [x0, y0]] = ends(chain, trails[i - 1]);
    const [[x1, y1]] = ends(chain, trails[i]);
    sum += Math.hypot(x1 - x0, y1 - y0);
  }
  return sum;
}

describe('the ways over detached parts', () => {
  it('make the jumps between them as short as trying everything finds', () => {
    fc.assert(
      fc.property(visits, ({ chain, visits }) => {
        const inChain = ({ legs, ways }: Visit, w: number) =>
          Array.from(ways[w], (step) => 2 * legs[step >> 1] + (step & 1));
        let best = Number.POSITIVE_INFINITY;
        const descend = (i: number, trails: number[][]) => {
          if (i === visits.length) best = Math.min(best, jumps(chain, trails));
          else for (const w of visits[i].ways.keys()) descend(i + 1, [...trails, inChain(visits[i], w)]);
        };
        descend(0, []);
        const chosen = shortJumps(chain, visits);
        expect(
          jumps(
            chain,
            visits.map((visit, i) => inChain(visit, chosen[i])),
          ),
        ).toBeCloseTo(best, 6);
      }),
      { numRuns: 200 },
    );
  });

  it('lead a row of single strokes onward, though the hand draws each of them back', () => {
    const maker = new ChainMaker();
    for (let i = 0; i < 8; i++) {
      maker.leg(i, 0, 'straight', 3, [
        [10 * i + 6, 0],
        [10 * i, 0],
      ]);
    }
    const chain = maker.chain();
    const trails = routesOf(chain).map(({ trail }) => trail);
    expect(jumps(chain, trails)).toBeCloseTo(7 * 4, 9);
  });

  it('let closed figures begin and end where the next is nearest', () => {
    const maker = new ChainMaker();
    const square: Spot[] = [
      [0, 0],
      [4, 0],
      [4, 4],
      [0, 4],
    ];
    for (let i = 0; i < 5; i++) {
      square.forEach(([x, y], side) => {
        const [u, v] = square[(side + 1) % 4];
        // each square stands higher than the one before
        maker.leg(i, side, 'straight', 1, [
          [x + 9 * i, y - 4 * i],
          [u + 9 * i, v - 4 * i],
        ]);
      });
    }
    const chain = maker.chain();
    const trails = routesOf(chain).map(({ trail }) => trail);
    const corner = (i: number, c: number): Spot => [square[c][0] + 9 * i, square[c][1] - 4 * i];
    let best = Number.POSITIVE_INFINITY;
    // every choice of one corner for each of the five
    for (let choice = 0; choice < 4 ** 5; choice++) {
      const at = Array.from({ length: 5 }, (_, i) => corner(i, Math.floor(choice / 4 ** i) % 4));
      let sum = 0;
      for (let i = 1; i < 5; i++) sum += Math.hypot(at[i][0] - at[i - 1][0], at[i][1] - at[i - 1][1]);
      best = Math.min(best, sum);
    }
    expect(jumps(chain, trails)).toBeCloseTo(best, 6);
  });
});
