import type { HandThread } from '../formats/dressing.js';
import { PASSES_APART, threadWidth } from './craft.js';

/** Threads that a hand uses: their names, and how wide they lie on the cloth, mm. Common practice. */
const HAND: Readonly<Record<HandThread, { readonly title: string; readonly laid: number }>> = {
  'one-strand': { title: 'one strand', laid: 0.35 },
  'two-strands': { title: 'two strands', laid: 0.55 },
  'pearl-8': { title: 'pearl No. 8', laid: 0.6 },
  'pearl-5': { title: 'pearl No. 5', laid: 0.85 },
};

/** The finest machine thread needs fewer passes for the heaviest thread of a hand. */
const MOST = 20;
/** Widths that differ by less are the same, mm: of two ways that come as near, the one with less thread is taken. */
const SAME = 1e-9;
/** What comes out wider or narrower by more than this share no longer looks like the thread that is asked for. Common practice. */
const UNLIKE = 1 / 3;

/** Passes of a machine thread side by side. */
export interface Heaviness {
  readonly passes: number;
  /** from the middle of one pass to the middle of the next, mm */
  readonly spread: number;
  /** of all of them, mm */
  readonly width: number;
}

export const handThreadTitle = (hand: HandThread): string => HAND[hand].title;
export const handThreadWidth = (hand: HandThread): number => HAND[hand].laid;

/** The passes of a thread, and how far apart they lie, that come nearest to the width of a hand's thread. */
export function asHeavyAs(hand: HandThread, weight: string): Heaviness {
  let best = inPasses(hand, weight, 1);
  for (let passes = 2; passes <= MOST; passes++) {
    const one = inPasses(hand, weight, passes);
    if (away(hand, one) < away(hand, best) - SAME) best = one;
  }
  return best;
}

/** So many passes of a thread, as near to the width of a hand's thread as they may lie side by side. */
export function inPasses(hand: HandThread, weight: string, passes: number): Heaviness {
  const one = threadWidth(weight);
  const even = (HAND[hand].laid - one) / Math.max(1, passes - 1);
  const spread = Math.min(PASSES_APART.most, Math.max(PASSES_APART.least, even));
  return { passes, spread, width: one + (passes - 1) * spread };
}

/** Whether that looks like the thread of the hand. */
export const isLike = (hand: HandThread, heaviness: Heaviness): boolean =>
  away(hand, heaviness) <= UNLIKE * HAND[hand].laid;

const away = (hand: HandThread, { width }: Heaviness): number => Math.abs(width - HAND[hand].laid);
