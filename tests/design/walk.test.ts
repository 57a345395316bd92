import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shortWalk } from '../../src/design/short-walk.js';
import { type Walk, walkLength } from '../../src/design/walk.js';

const mm = fc.double({ min: 0, max: 100, noNaN: true });
/** Pieces with what has to be sewn before each: any of those before it in the order given. */
const walks = (most: number): fc.Arbitrary<Walk> =>
  fc
    .array(fc.tuple(mm, mm, mm, mm, fc.array(fc.nat(), { maxLength: 2 })), { minLength: 2, maxLength: most })
    .map((pieces) => ({
      ends: Float64Array.from(pieces.flatMap((piece) => piece.slice(0, 4) as number[])),
      earlier: pieces.map(([, , , , waits], i) => (i === 0 ? [] : [...new Set(waits.map((one) => one % i))])),
    }));

/** The shortest of all orders that are allowed, each tried. */
function shortest(walk: Walk): number {
  const n = walk.earlier.length;
  let best = Infinity;
  const go = (order: number[], length: number) => {
    if (length >= best) return;
    if (order.length === n) best = length;
    for (let next = 0; next < n; next++) {
      if (order.includes(next) || !walk.earlier[next].every((one) => order.includes(one))) continue;
      go([...order, next], order.length ? walkLength(walk, [order[order.length - 1], next]) + length : 0);
    }
  };
  go([], 0);
  return best;
}

const keepsOrder = ({ earlier }: Walk, order: Int32Array): boolean => {
  const place = new Map([...order].map((piece, at) => [piece, at]));
  return earlier.every((pieces, piece) => pieces.every((one) => place.get(one)! < place.get(piece)!));
};

/** Jumps are compared in thousandths of a millimeter. */
const ROUNDING = 0.02;

describe('the order of pieces in a color stop', () => {
  test('sews each once, and what has to be sewn before another before it', () => {
    fc.assert(
      fc.property(walks(60), (walk) => {
        const order = shortWalk(walk);
        expect([...order].sort((a, b) => a - b)).toEqual(walk.earlier.map((_, i) => i));
        expect(keepsOrder(walk, order)).toBe(true);
      }),
    );
  });

  test('is the shortest there is, all orders tried, but for 1 % that leaving the given one is not worth', () => {
    fc.assert(
      fc.property(walks(7), (walk) => {
        expect(walkLength(walk, shortWalk(walk))).toBeLessThanOrEqual(shortest(walk) / 0.99 + ROUNDING);
      }),
    );
  });

  test('is at most 5 % longer than the shortest where it is searched for as in large stops', () => {
    fc.assert(
      fc.property(walks(9), (walk) => {
        expect(walkLength(walk, shortWalk(walk, { exactUpTo: 0 }))).toBeLessThanOrEqual(
          1.05 * shortest(walk) + ROUNDING,
        );
      }),
      { numRuns: 60 },
    );
  });

  test('is at most 5 % longer than the shortest of 13 pieces, found by a table of all sets of them', () => {
    fc.assert(
      fc.property(walks(13), (walk) => {
        const best = walkLength(walk, shortWalk(walk, { exactUpTo: 13 }));
        expect(walkLength(walk, shortWalk(walk, { exactUpTo: 0 }))).toBeLessThanOrEqual(
          1.05 * best + ROUNDING,
        );
      }),
      { numRuns: 30 },
    );
  });

  test('of figures to both hands of a line goes along one hand and comes back along the other', () => {
    const spots = Array.from({ length: 24 }, (_, i) => [4 * i, i % 2 === 0 ? 0 : 20]);
    const ends = Float64Array.from(spots.flatMap(([x, y]) => [x, y, x + 1, y]));
    const order = [...shortWalk({ ends, earlier: spots.map(() => []) })].map((i) => i % 2);
    expect(order.filter((hand, at) => at > 0 && hand !== order[at - 1])).toHaveLength(1);
  });

  test('is the one given where figures stand along a line', () => {
    const ends = Float64Array.from(Array.from({ length: 200 }, (_, i) => [5 * i, 0, 5 * i + 2, 1]).flat());
    const given = Array.from({ length: 200 }, (_, i) => i);
    expect([...shortWalk({ ends, earlier: given.map(() => []) })]).toEqual(given);
  });

  test('is never longer than the order given', () => {
    fc.assert(
      fc.property(walks(60), (walk) => {
        const given = walk.earlier.map((_, i) => i);
        expect(walkLength(walk, shortWalk(walk))).toBeLessThanOrEqual(walkLength(walk, given) + 1e-6);
      }),
    );
  });
});
