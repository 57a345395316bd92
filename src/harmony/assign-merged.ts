import type { StopsBy } from '../design/merge.js';
import { assignThreads, type Search } from './assign-threads.js';
import { type Assigned, type Assignment, priceOf } from './assignment.js';

/** What was assigned, and the order in which the things are sewn in it. */
export interface AssignedInOrder extends Assigned {
  readonly order: readonly number[];
}

/** After so many turns orders and assignments have settled, or go on by little. */
const MOST_TURNS = 6;
/** Of these none can be shown to be the best, so that the exact search only looks whether little is missing. */
const FEW_STEPS = 20_000;

/**
 * The best thread for each thing where the order of sewing depends on the threads: things in one thread are sewn together as
 * far as what lies over what allows, and changes are counted over the color stops as they then are.
 *
 * A row is a stop of its own: its order is fixed. All in one stop have one thread. For stops by thread two things are known. No
 * assignment has fewer changes than threads less one, so that the best without regard to order, where its stops have no more, is
 * the best of all. And the stops of any assignment are an order for every other, which has no more changes than that order gives it:
 * so an assignment found for the stops of the one before is as good at least, and limits are kept on the way.
 *
 * @param orderOf the things as they are sewn in these threads, each as often as it is; as rows where none are given
 */
export function assignAsMerged(
  puzzle: Omit<Assignment, 'order'>,
  by: StopsBy,
  seed: number,
  orderOf: (chosen: readonly number[] | null) => readonly number[],
): AssignedInOrder {
  const given = (order: readonly number[], more: Partial<Assignment> = {}, search?: Search): Assigned =>
    assignThreads({ ...puzzle, order, ...more }, seed, search);
  const rows = orderOf(null);
  if (by === 'row') return { ...given(rows), order: rows };
  if (by === 'all') {
    const one = given(rows, { mostThreads: 1 });
    return { ...one, order: orderOf(one.chosen) };
  }
  const { perThread, perChange, mostThreads = Infinity, mostChanges = Infinity } = puzzle;
  const truly = (found: Assigned): AssignedInOrder => {
    const order = orderOf(found.chosen);
    return { ...found, order, price: priceOf({ ...puzzle, order }, found.chosen) };
  };
  // a change for each thread beyond the first: prices are lower by one change at most, the same for all
  const free = given([], {
    perThread: perThread + perChange,
    mostThreads: Math.min(mostThreads, mostChanges + 1),
    mostChanges: Infinity,
  });
  const unordered = truly(free);
  if (unordered.price <= free.price - perChange + 1e-9) return unordered;
  let best: AssignedInOrder = { ...truly(given(rows, {}, { most: FEW_STEPS })), isBest: false };
  if (unordered.price < best.price - 1e-9) best = { ...unordered, isBest: false };
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const next = truly(given(best.order, {}, { most: FEW_STEPS, start: best.chosen }));
    if (next.price >= best.price - 1e-9) break;
    best = { ...next, isBest: false };
  }
  return best;
}
