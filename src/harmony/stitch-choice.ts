import type { LineId } from '../block/meetings.js';
import { choose } from './choose.js';
import type { Offer } from './offer.js';
import { puzzleOf } from './puzzle.js';
import type { SeamFacts } from './seam-facts.js';
import { canBeWorked, type Suit, suit } from './suiting.js';
import { numbered, stitchTaste } from './taste.js';

export interface StitchQuestion {
  /** lines that get something; they come first among the lines */
  readonly seams: readonly SeamFacts[];
  readonly lines: readonly LineId[];
  readonly neighbors: readonly (readonly number[])[];
  readonly library: readonly Offer[];
  /** for each line what it has in any case */
  readonly settled: readonly (Offer | undefined)[];
  readonly seed: number;
}

export interface StitchChoice {
  /** for each line */
  readonly offers: readonly Offer[];
  /** for each seam that gets something, at which size */
  readonly suits: readonly Suit[];
  /** places among the lines of those that meet and share a stitch all the same */
  readonly clashes: readonly (readonly [number, number])[];
  /** that there is no choice with fewer */
  readonly proved: boolean;
}

/** What each seam gets: never a stitch that one it meets has, as far as the library goes, and the rest by taste. */
export function stitchesOfSeams(question: StitchQuestion): StitchChoice {
  const { seams, lines, neighbors, library, settled, seed } = question;
  const offers = [...library];
  const place = settled.map((offer) => (offer ? offers.push(offer) - 1 : -1));
  const words = offers.flatMap((offer) => offer.stitches);
  const numbers = numbered(words);
  let next = 0;
  const marks = offers.map((offer) => offer.stitches.map(() => numbers[next++]));
  const allowed = lines.map((_, i) => (place[i] >= 0 ? [place[i]] : workable(library, seams[i])));
  const puzzle = puzzleOf({ neighbors, offers: allowed, marks });
  const suits = seams.map((seam) => offers.map((offer) => suit(offer, seam)));
  const own = lines.map((_, i) => Float64Array.from(offers, (__, k) => suits[i]?.[k].cost ?? 0));
  const ids = lines.map((line) => (line === 'outline' ? 0 : line));
  const { chosen, clashes, proved } = choose(puzzle, place, stitchTaste(puzzle, offers, own, ids, seed));
  return {
    offers: [...chosen].map((offer) => offers[offer]),
    suits: suits.map((row, i) => row[chosen[i]]),
    clashes,
    proved,
  };
}

/** The offers of which two repeats lie on a seam; on one that is too short for all, the shortest. */
function workable(library: readonly Offer[], seam: SeamFacts): number[] {
  const all = library.map((_, k) => k);
  const fitting = all.filter((k) => canBeWorked(library[k], seam));
  if (fitting.length > 0) return fitting;
  const length = (k: number) => library[k].repeat * library[k].least;
  const least = Math.min(...all.map(length));
  return all.filter((k) => length(k) === least);
}
