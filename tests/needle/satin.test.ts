import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { craftFor } from '../../src/needle/craft.js';
import type { Craft } from '../../src/needle/run.js';
import { sewChain } from '../../src/needle/sew-chain.js';
import { ChainMaker, craft } from './chains.js';

type Spot = readonly [number, number];
type Satin = 'petal' | 'cord';

/** A satin along x from 0 to `length`, sewn alone. */
function sewn(kind: Satin, width: number, passes: number, asked: Craft, length = 9): Spot[] {
  const path: Spot[] = [
    [0, 0],
    [length, 0],
  ];
  const { runs } = sewChain(new ChainMaker().leg(0, 0, kind, passes, path, width).chain(), asked);
  expect(runs.start).toHaveLength(2);
  return Array.from({ length: runs.xy.length / 2 }, (_, i): Spot => [runs.xy[2 * i], runs.xy[2 * i + 1]]);
}

/** Where the zigzag begins: from there on every stitch crosses the middle. */
function zigzagOf(points: readonly Spot[]): number {
  let from = points.length - 6;
  while (from > 0 && points[from - 1][1] * points[from][1] < 0) from--;
  return from;
}

const across = (points: readonly Spot[]): number => {
  const ys = points.map(([, y]) => y);
  return Math.max(...ys) - Math.min(...ys);
};

const kinds = fc.constantFrom<Satin>('petal', 'cord');
const passes = fc.integer({ min: 1, max: 5 });

describe('a satin wider than 2 mm', () => {
  it('has thread along both its edges beneath it, 0.4 to 0.5 mm inside, from end to end', () => {
    fc.assert(
      fc.property(kinds, fc.double({ min: 2.05, max: 4, noNaN: true }), passes, (kind, width, count) => {
        const points = sewn(kind, width, count, craft);
        const beneath = points.slice(0, zigzagOf(points));
        const edge = width / 2 - 0.45;
        // a petal is as wide as it is to be in its middle alone
        const middle = beneath.filter(([x]) =>
          kind === 'cord' ? x > 1.5 && x < 7.5 : Math.abs(x - 4.5) < 0.8,
        );
        for (const hand of [1, -1]) {
          const along = middle.filter(([, y]) => Math.abs(hand * y - edge) < 0.06);
          expect(along.length).toBeGreaterThanOrEqual(kind === 'cord' ? 5 : 1);
        }
        // and nothing of it comes to lie outside
        for (const [, y] of beneath) expect(Math.abs(y)).toBeLessThanOrEqual(edge + 1e-6);
      }),
    );
  });

  it('pierces its two ends no more often for it', () => {
    const endHoles = (width: number) =>
      sewn('cord', width, 3, craft).filter(([x, y]) => y === 0 && (x === 0 || x === 9)).length;
    expect(endHoles(2.4)).toBe(endHoles(1.9));
  });
});

describe('a satin of up to 2 mm', () => {
  it('lies on what runs along its middle', () => {
    fc.assert(
      fc.property(kinds, fc.double({ min: 1, max: 2, noNaN: true }), passes, (kind, width, count) => {
        const points = sewn(kind, width, count, craft);
        for (const [, y] of points.slice(0, zigzagOf(points))) expect(Math.abs(y)).toBeLessThan(0.23);
      }),
    );
  });
});

describe('pull compensation', () => {
  it('makes satin so much wider to either side, and nothing that lies beneath it', () => {
    fc.assert(
      fc.property(
        kinds,
        fc.double({ min: 1.2, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        passes,
        (kind, width, pull, count) => {
          const [plain, wider] = [0, pull].map((by) =>
            sewn(kind, width, count, craftFor('No. 40', { pull: by })),
          );
          expect(across(wider)).toBeCloseTo(across(plain) + 2 * pull, 6);
          expect(across(wider.slice(0, zigzagOf(wider)))).toBeCloseTo(
            across(plain.slice(0, zigzagOf(plain))),
            9,
          );
        },
      ),
    );
  });

  it('leaves all else as it is: straights, curves, knots', () => {
    const chain = new ChainMaker()
      .leg(0, 0, 'straight', 3, [
        [0, 0],
        [5, 0],
      ])
      .leg(0, 1, 'curve', 3, [
        [5, 0],
        [7, 1],
        [9, 0],
      ])
      .leg(
        0,
        2,
        'knot',
        1,
        [
          [9, 0],
          [9, 0],
        ],
        1.5,
      )
      .chain();
    expect(sewChain(chain, craftFor('No. 40', { pull: 0.4 }))).toEqual(sewChain(chain, craftFor('No. 40')));
  });
});
