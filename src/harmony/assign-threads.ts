import { improved } from './anneal-threads.js';
import { type Assigned, type Assignment, priceOf } from './assignment.js';
import { exact } from './exact-threads.js';

/** Steps of the exact search: about a second. */
const MOST_STEPS = 400_000;

export interface Search {
  /** steps of the exact search */
  readonly most?: number;
  /** an assignment within the limits from which a search that only goes on sets out */
  readonly start?: readonly number[];
}

/**
 * The best thread for each thing. A search that only goes on improves one assignment; then all that could be better are
 * gone through, as long as that takes no more than a second: so small ones come out exact, and large ones good.
 */
export function assignThreads(
  puzzle: Assignment,
  seed: number,
  { most = MOST_STEPS, start }: Search = {},
): Assigned {
  if (puzzle.own.length === 0) return { chosen: [], price: 0, isBest: true };
  const good = improved(puzzle, seed, start);
  const { chosen, isDone } = exact(puzzle, good, most);
  return { chosen, price: priceOf(puzzle, chosen), isBest: isDone };
}
