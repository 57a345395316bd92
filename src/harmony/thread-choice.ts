import { CLEAR, contrast, SEEN } from '../color/contrast.js';
import type { ThreadChoice } from '../formats/dressing.js';
import { noise } from '../geometry/noise.js';
import { choose } from './choose.js';
import { PALETTE } from './palette.js';
import { puzzleOf } from './puzzle.js';
import type { SeamFacts } from './seam-facts.js';

/** What it costs when a thread is not clear on either fabric, or not to be seen on one of them. */
const UNCLEAR = 1.5;
const UNSEEN_ON_ONE = 0.6;
const SAME_AS_NEIGHBOR = 0.5;
const AGAIN = 1.2;
const CHANCE = 0.4;
/** Colors this far apart are plainly different; further apart is not better, else all blocks end up black and white. */
const DIFFERENT = 0.3;

/** How badly a thread shows along a seam; 0 when it is clear on one side and seen on the other. */
export function melting({ hex }: ThreadChoice, { fabrics }: Pick<SeamFacts, 'fabrics'>): number {
  return fabrics.reduce((sum, { share, left, right }) => {
    const sides = [left, right].filter((fabric) => fabric !== null).map((fabric) => contrast(hex, fabric));
    if (sides.length === 0) return sum;
    const [low, high] = [Math.min(...sides), Math.max(...sides)];
    return sum + share * (UNCLEAR * Math.max(0, CLEAR - high) + UNSEEN_ON_ONE * Math.max(0, SEEN - low));
  }, 0);
}

/** Whether it melts into the fabrics on both sides, along more than half of the seam. */
export const meltsIntoBoth = (thread: ThreadChoice, seam: Pick<SeamFacts, 'fabrics'>): boolean =>
  shareLost(thread, seam, (sides) => sides.every((lost) => lost)) > 0.5;

/** Whether it melts into the fabric on one side at least, along more than half of the seam. */
export const meltsIntoOne = (thread: ThreadChoice, seam: Pick<SeamFacts, 'fabrics'>): boolean =>
  shareLost(thread, seam, (sides) => sides.some((lost) => lost)) > 0.5;

/** Along which share of a seam a thread is lost. @param isLost told for the sides with a fabric whether it is lost there */
function shareLost(
  { hex }: ThreadChoice,
  { fabrics }: Pick<SeamFacts, 'fabrics'>,
  isLost: (sides: readonly boolean[]) => boolean,
): number {
  return fabrics.reduce((sum, { share, left, right }) => {
    const sides = [left, right].filter((fabric) => fabric !== null);
    const lost = sides.length > 0 && isLost(sides.map((fabric) => contrast(hex, fabric) < SEEN));
    return sum + (lost ? share : 0);
  }, 0);
}

/**
 * So many threads of the palette, that show on the most seams and differ from each other. One alone is old gold, the
 * classic; with more it stays unless it shows on too few.
 * @param first a thread that is wanted in any case
 * @param own threads to choose from instead of the built-in ones; none of them is the classic
 */
export function threadsFrom(
  count: number,
  seams: readonly SeamFacts[],
  seed: number,
  first?: ThreadChoice,
  own?: readonly ThreadChoice[],
): ThreadChoice[] {
  const start = first ?? (own ? undefined : PALETTE[0]);
  const others = (own ?? PALETTE).filter((thread) => thread.hex !== start?.hex);
  const all = start ? [start, ...others] : others;
  const picked = start ? [start] : [];
  const length = seams.reduce((sum, seam) => sum + seam.length, 0) || 1;
  const shows = all.map((thread) => seams.map((seam) => melting(thread, seam)));
  while (picked.length < Math.min(count, all.length)) {
    const price = (k: number): number => {
      if (picked.includes(all[k])) return Number.POSITIVE_INFINITY;
      const left = seams.reduce((sum, seam, s) => {
        const best = Math.min(shows[k][s], ...picked.map((thread) => shows[all.indexOf(thread)][s]));
        return sum + (best * seam.length) / length;
      }, 0);
      const near = Math.min(...picked.map((thread) => apart(all[k].hex, thread.hex)));
      return 2 * left - Math.min(DIFFERENT, near) / DIFFERENT + CHANCE * noise(seed, 7001, k);
    };
    const prices = all.map((_, k) => price(k));
    picked.push(all[prices.indexOf(Math.min(...prices))]);
  }
  return picked;
}

/** The thread of each seam, by its place among the threads: one that shows, unlike its neighbors', all of them in use. */
export function threadsOfSeams(
  threads: readonly ThreadChoice[],
  seams: readonly SeamFacts[],
  neighbors: readonly (readonly number[])[],
  seed: number,
): Int32Array {
  const every = threads.map((_, k) => k);
  const puzzle = puzzleOf({ neighbors, offers: seams.map(() => every), marks: threads.map(() => []) });
  const own = seams.map((seam) =>
    threads.map((thread, k) => melting(thread, seam) + CHANCE * noise(seed, 7002, seam.id, k)),
  );
  return choose(puzzle, new Int32Array(seams.length).fill(-1), () => {
    const uses = new Int32Array(threads.length);
    return {
      cost: (thing, offer, chosen) =>
        own[thing][offer] +
        neighbors[thing].reduce((sum, other) => sum + (chosen[other] === offer ? SAME_AS_NEIGHBOR : 0), 0) +
        (AGAIN * uses[offer] * threads.length) / seams.length,
      count(_thing, offer, by) {
        uses[offer] += by;
      },
    };
  }).chosen;
}

/**
 * The threads of one seam's work in turn: its own first (-1 for none), then those that show best and differ. What melts
 * into the fabrics is none of them, unless all do.
 */
export function threadOrder(
  threads: readonly ThreadChoice[],
  main: number,
  seam: Pick<SeamFacts, 'id' | 'fabrics'>,
  seed: number,
): readonly number[] {
  const prices = threads.map((thread, k) => {
    if (k === main) return Number.NEGATIVE_INFINITY;
    const unlike = main < 0 ? 0 : Math.min(DIFFERENT, apart(thread.hex, threads[main].hex)) / DIFFERENT;
    return melting(thread, seam) - unlike + CHANCE * noise(seed, 7003, seam.id, k);
  });
  const order = threads.map((_, k) => k).sort((a, b) => prices[a] - prices[b] || a - b);
  const seen = order.filter((k) => k === main || !meltsIntoBoth(threads[k], seam));
  return seen.length > 0 ? seen : order;
}

/** How different two colors look, 0 to about 1: the redmean distance over its greatest (T. Riemersma; from memory). */
export function apart(a: string, b: string): number {
  const channels = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  const [p, q] = [channels(a), channels(b)];
  const red = (p[0] + q[0]) / 2;
  const [dr, dg, db] = p.map((value, i) => value - q[i]);
  return Math.sqrt((2 + red / 256) * dr * dr + 4 * dg * dg + (2 + (255 - red) / 256) * db * db) / 765;
}
