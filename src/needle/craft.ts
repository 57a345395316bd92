import { ticketOf } from '../formats/thread-weight.js';
import type { Craft } from './run.js';

/**
 * Of threads by ticket number: the width at which they lie sewn on the cloth, and the shortest good stitch on open line
 * work, mm. Common practice.
 */
const THREADS = [
  { ticket: 12, laid: 0.65, shortest: 2 },
  { ticket: 30, laid: 0.45, shortest: 1.2 },
  { ticket: 40, laid: 0.4, shortest: 0.8 },
  { ticket: 60, laid: 0.25, shortest: 0.8 },
] as const;
/** What a weight counts as that cannot be read. */
const USUAL = 40;

/** Laid width of a thread, mm. */
export const threadWidth = (weight: string): number => ofThread(weight, 'laid');

/** Thicker and finer threads than those known count as the nearest; those in between lie between their neighbors. */
function ofThread(weight: string, what: 'laid' | 'shortest'): number {
  const ticket = ticketOf(weight) ?? USUAL;
  const above = THREADS.findIndex((thread) => thread.ticket >= ticket);
  if (above <= 0) return THREADS[above < 0 ? THREADS.length - 1 : 0][what];
  const [a, b] = [THREADS[above - 1], THREADS[above]];
  return b[what] + ((b.ticket - ticket) / (b.ticket - a.ticket)) * (a[what] - b[what]);
}

/**
 * How much larger than in No. 40 a figure has to be in another thread, so that its legs stand as far apart beside the
 * width of the thread: sizes grow with that width, and get no smaller in a finer one. Common practice.
 */
export const largerFor = (weight: string): number =>
  Math.max(1, threadWidth(weight) / threadWidth(`${USUAL}`));

/** Passes lie so far apart side by side, mm: nearer ones heap up, and cloth shows between wider ones. Common practice. */
export const PASSES_APART = { least: 0.2, usual: 0.22, most: 0.25 };

/** What the maker may ask of sewing. */
export interface SewnAs {
  /** how much wider satin is sewn to either side, mm; 0 when not given */
  readonly pull?: number;
  /** between passes side by side, mm, where it is not as usual */
  readonly spread?: number;
}

/** What sewing with a thread asks for: hand-look legs in one stitch up to 7 mm, six piercings a hole on firm cotton. */
export function craftFor(weight: string, { pull = 0, spread = PASSES_APART.usual }: SewnAs = {}): Craft {
  return {
    threadWidth: threadWidth(weight),
    longest: 7,
    shortest: ofThread(weight, 'shortest'),
    holeLimit: 6,
    spread,
    pull,
  };
}
