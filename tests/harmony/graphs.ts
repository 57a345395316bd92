import fc from 'fast-check';
import type { Ledger } from '../../src/harmony/puzzle.js';

export type Neighbors = number[][];

/** Neighbors from pairs; pairs of one thing with itself and repeated ones count for nothing. */
export function neighborsOf(things: number, pairs: readonly (readonly [number, number])[]): Neighbors {
  const sets = Array.from({ length: things }, () => new Set<number>());
  for (const [a, b] of pairs) {
    if (a === b) continue;
    sets[a].add(b);
    sets[b].add(a);
  }
  return sets.map((set) => [...set].sort((a, b) => a - b));
}

/** Any graph of so many things. */
export const graph = (least: number, most: number): fc.Arbitrary<Neighbors> =>
  fc.integer({ min: least, max: most }).chain((things) => {
    const thing = fc.integer({ min: 0, max: things - 1 });
    return fc
      .array(fc.tuple(thing, thing), { maxLength: 3 * things })
      .map((pairs) => neighborsOf(things, pairs));
  });

/** Graphs in which no two of one half meet. */
export const twoHalves = (most: number): fc.Arbitrary<Neighbors> =>
  fc.integer({ min: 2, max: most }).chain((things) => {
    const thing = fc.integer({ min: 0, max: things - 1 });
    return fc.array(fc.tuple(thing, thing), { maxLength: 4 * things }).map((pairs) =>
      neighborsOf(
        things,
        pairs.filter(([a, b]) => a % 2 !== b % 2),
      ),
    );
  });

/**
 * Planar graphs: triangles that grow by a new corner inside one of them, and then lose some of their sides. Every such
 * graph can be drawn without crossings, since each corner is put where it was drawn.
 */
export const planar = (least: number, most: number): fc.Arbitrary<Neighbors> =>
  fc.integer({ min: least, max: most }).chain((things) =>
    fc
      .tuple(
        fc.array(fc.nat(), { minLength: things, maxLength: things }),
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3 * things, maxLength: 3 * things }),
      )
      .map(([picks, keep]) => {
        const pairs: [number, number][] = [
          [0, 1],
          [1, 2],
          [2, 0],
        ];
        const faces: [number, number, number][] = [
          [0, 1, 2],
          [0, 1, 2],
        ];
        for (let thing = 3; thing < things; thing++) {
          const [[a, b, c]] = faces.splice(picks[thing] % faces.length, 1);
          faces.push([a, b, thing], [b, c, thing], [c, a, thing]);
          pairs.push([a, thing], [b, thing], [c, thing]);
        }
        return neighborsOf(
          things,
          pairs.filter((_, k) => keep[k % keep.length] > 0),
        );
      }),
  );

/** Takes no notice and finds all offers alike. */
export const noTaste = (): Ledger => ({ cost: () => 0, count: () => {} });

/** So many stitches, that all may have. */
export const stitches = (things: number, count: number) => ({
  offers: Array.from({ length: things }, () => Array.from({ length: count }, (_, k) => k)),
  marks: Array.from({ length: count }, (_, k) => [k]),
});

export const nothingSettled = (things: number): Int32Array => new Int32Array(things).fill(-1);
