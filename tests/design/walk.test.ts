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
      ends: Float64Array.from(pieces.flatMap(([a, b, c, d]) => [a, b, c, d])),
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
        expect(walkLength(walk, shortWalk(walk))).toBeLessThanOrEqual(shortest(walk) / 0.99 + 1e-6);
      }),
    );
  });

  test('is at most 5 % longer than the shortest where it is searched for as in large stops', () => {
    fc.assert(
      fc.property(walks(9), (walk) => {
        expect(walkLength(walk, shortWalk(walk, 0))).toBeLessThanOrEqual(1.05 * shortest(walk) + 1e-6);
      }),
      { numRuns: 60 },
    );
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
