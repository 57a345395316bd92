import { noise } from '../geometry/noise.js';
import type { Offer } from './offer.js';
import type { Ledger, Puzzle } from './puzzle.js';

/** How much chance is worth: enough for another block with every seed, too little to go against the rules of taste. */
const CHANCE = 0.7;
/** Neighbors of one family look alike, and so do those with the same flower; two that are both rich crowd each other. */
const SAME_FAMILY = 1.2;
const SAME_ACCENT = 0.4;
const BOTH_RICH = 0.3;
/** A second use of a stitch in a block of a dozen seams, and of a family there. */
const AGAIN = 1;
const FAMILY_AGAIN = 0.35;
const DOZEN = 12;
/** So many of the seams carry accents, and how much it matters. */
const RICH_SHARE = 0.4;
const RICH = 1.1;

/**
 * What each offer costs beside the others: how it suits its seam, what it looks like next to those that it meets, how
 * often its stitches and its family are there already, whether enough seams are rich, and a little chance.
 * @param own for each seam what each offer costs by itself
 * @param ids for each seam a number of its own
 */
export function stitchTaste(
  puzzle: Puzzle,
  offers: readonly Offer[],
  own: readonly Float64Array[],
  ids: readonly number[],
  seed: number,
): () => Ledger {
  const { neighbors, marks } = puzzle;
  const keys = offers.map(({ name }) => keyOf(name));
  const families = numbered(offers.map(({ family }) => family));
  const rich = offers.map(({ accents }) => accents.length > 0);
  const accents = offers.map((offer) => new Set(offer.accents));
  const size = offers.length;
  const together = new Float64Array(size * size);
  for (let a = 0; a < size; a++) {
    for (let b = 0; b < size; b++) {
      together[a * size + b] =
        (families[a] === families[b] ? SAME_FAMILY : 0) +
        (rich[a] && rich[b] ? BOTH_RICH : 0) +
        ([...accents[a]].some((name) => accents[b].has(name)) ? SAME_ACCENT : 0);
    }
  }
  const seams = neighbors.length;
  const chance = own.map((costs, thing) => costs.map((_, k) => CHANCE * noise(seed, ids[thing], keys[k])));
  const wantRich = Math.max(1, RICH_SHARE * seams);
  return () => {
    const uses = new Int32Array(1 + Math.max(-1, ...marks.flat()));
    const ofFamily = new Int32Array(1 + Math.max(-1, ...families));
    let richOnes = 0;
    return {
      cost(thing, offer, chosen) {
        let cost = own[thing][offer] + chance[thing][offer];
        for (const other of neighbors[thing]) {
          if (chosen[other] >= 0) cost += together[offer * size + chosen[other]];
        }
        for (const mark of marks[offer]) cost += (AGAIN * uses[mark] * DOZEN) / seams;
        cost += (FAMILY_AGAIN * ofFamily[families[offer]] * DOZEN) / seams;
        if (rich[offer]) cost += RICH * ((richOnes + 0.5) / wantRich - 1);
        return cost;
      },
      count(_thing, offer, by) {
        for (const mark of marks[offer]) uses[mark] += by;
        ofFamily[families[offer]] += by;
        if (rich[offer]) richOnes += by;
      },
    };
  };
}

/** Equal words get equal numbers, from 0 in the order in which they come. */
export function numbered(words: readonly string[]): Int32Array {
  const known = new Map<string, number>();
  return Int32Array.from(words, (word) => {
    if (!known.has(word)) known.set(word, known.size);
    return known.get(word)!;
  });
}

/** A number for a name, the same wherever it stands in a dictionary: FNV-1a (Fowler, Noll and Vo; from memory). */
export function keyOf(name: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
