import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choose } from '../../src/harmony/choose.js';
import { fewestClashes } from '../../src/harmony/fewest-clashes.js';
import { clashes, type Puzzle, puzzleOf } from '../../src/harmony/puzzle.js';
import { chooseInTurn } from '../../src/harmony/saturation.js';
import { graph, type Neighbors, noTaste, nothingSettled, planar, stitches, twoHalves } from './graphs.js';

const withStitches = (neighbors: Neighbors, count: number): Puzzle =>
  puzzleOf({ neighbors, ...stitches(neighbors.length, count) });
const inTurn = (neighbors: Neighbors, count: number) => {
  const puzzle = withStitches(neighbors, count);
  return clashes(puzzle, chooseInTurn(puzzle, nothingSettled(neighbors.length), noTaste())).length;
};

/** The fewest clashes of all choices there are, by trying each. */
function byTrying({ neighbors, offers, marks }: Puzzle, settled: ArrayLike<number>): number {
  const chosen = neighbors.map((_, i) => settled[i]);
  let fewest = Number.POSITIVE_INFINITY;
  const share = (a: number, b: number) => marks[a].some((mark) => marks[b].includes(mark));
  const next = (thing: number): void => {
    if (thing === chosen.length) {
      let count = 0;
      neighbors.forEach((near, a) => {
        for (const b of near) if (b > a && share(chosen[a], chosen[b])) count++;
      });
      fewest = Math.min(fewest, count);
      return;
    }
    for (const offer of settled[thing] >= 0 ? [settled[thing]] : offers[thing]) {
      chosen[thing] = offer;
      next(thing + 1);
    }
  };
  next(0);
  return fewest;
}

/** Small puzzles of every kind: offers with one or two stitches, not all for everyone, some settled. */
const anyPuzzle = graph(1, 6).chain((neighbors) =>
  fc
    .record({
      marks: fc.array(fc.uniqueArray(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 2 }), {
        minLength: 1,
        maxLength: 4,
      }),
      picks: fc.array(fc.integer({ min: 1, max: 15 }), {
        minLength: neighbors.length,
        maxLength: neighbors.length,
      }),
      pins: fc.array(fc.integer({ min: 0, max: 4 }), {
        minLength: neighbors.length,
        maxLength: neighbors.length,
      }),
    })
    .map(({ marks, picks, pins }) => {
      const offers = picks.map((bits) => {
        const some = marks.flatMap((_, k) => (bits & (1 << k) ? [k] : []));
        return some.length ? some : [0];
      });
      const settled = pins.map((pin, thing) => (pin === 0 ? offers[thing][0] : -1));
      return { puzzle: puzzleOf({ neighbors, offers, marks }), settled };
    }),
);

describe('a stitch for everyone, unlike those it meets', () => {
  test('in turn, nothing clashes when there is one stitch more than anyone has neighbors', () => {
    fc.assert(
      fc.property(graph(1, 40), (neighbors) => {
        const most = Math.max(...neighbors.map((near) => near.length));
        expect(inTurn(neighbors, most + 1)).toBe(0);
      }),
    );
  });

  test('in turn, two stitches do where two can do (Brelaz 1979: exact on bipartite graphs)', () => {
    fc.assert(
      fc.property(twoHalves(40), (neighbors) => {
        expect(inTurn(neighbors, 2)).toBe(0);
      }),
    );
  });

  test('no choice has fewer clashes than the search finds', () => {
    fc.assert(
      fc.property(anyPuzzle, ({ puzzle, settled }) => {
        const known = chooseInTurn(puzzle, settled, noTaste());
        const found = fewestClashes(puzzle, settled, known);
        expect(found.proved).toBe(true);
        expect(found.clashes).toBe(clashes(puzzle, found.chosen).length);
        expect(found.clashes).toBe(byTrying(puzzle, settled));
      }),
      { numRuns: 500 },
    );
  });

  test('four stitches suffice on up to fourteen whose meetings can be drawn without crossings (Appel and Haken 1977)', () => {
    fc.assert(
      fc.property(planar(4, 14), (neighbors) => {
        const puzzle = withStitches(neighbors, 4);
        const { clashes: left, proved } = choose(puzzle, nothingSettled(neighbors.length), noTaste);
        expect(left).toEqual([]);
        expect(proved).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test('four do not suffice where five meet in one point, and all but one pair are kept apart', () => {
    const five = Array.from({ length: 5 }, (_, a) => [0, 1, 2, 3, 4].filter((b) => b !== a));
    const puzzle = withStitches(five, 4);
    expect(choose(puzzle, nothingSettled(5), noTaste)).toMatchObject({
      proved: true,
      clashes: [expect.any(Array)],
    });
  });

  test('fourteen that all meet, with seven stitches, share each between two, and that is known', () => {
    const all = Array.from({ length: 14 }, (_, a) =>
      Array.from({ length: 14 }, (_, b) => b).filter((b) => b !== a),
    );
    const choice = choose(withStitches(all, 7), nothingSettled(14), noTaste);
    expect(choice.clashes).toHaveLength(7);
    expect(choice.proved).toBe(true);
  });

  test('what is settled stays, and taste never brings a clash', () => {
    fc.assert(
      fc.property(anyPuzzle, fc.integer(), ({ puzzle, settled }, seed) => {
        const taste = () => ({
          cost: (thing: number, offer: number) => Math.sin(seed + 7 * thing + 31 * offer),
          count: () => {},
        });
        const { chosen, clashes: left } = choose(puzzle, settled, taste);
        settled.forEach((offer, thing) => {
          if (offer >= 0) expect(chosen[thing]).toBe(offer);
          expect(puzzle.offers[thing]).toContain(chosen[thing]);
        });
        expect(left.length).toBe(byTrying(puzzle, settled));
      }),
    );
  });
});
