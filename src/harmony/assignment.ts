/** Things that each get one of several threads, sewn in a given order. */
export interface Assignment {
  /** price of each thread for each thing, 0 or more */
  readonly own: readonly (readonly number[])[];
  /** pairs of things that are seen together; the price is that of their threads times the weight */
  readonly pairs: readonly { readonly a: number; readonly b: number; readonly weight: number }[];
  /** price of two threads side by side, 0 or more, the same both ways */
  readonly clash: readonly (readonly number[])[];
  /** the things in the order in which they are sewn; one may come several times */
  readonly order: readonly number[];
  /** price of each thread that is in use, and of each change from one to another */
  readonly perThread: number;
  readonly perChange: number;
  /** so many threads at most, and so many changes */
  readonly mostThreads?: number;
  readonly mostChanges?: number;
}

export interface Assigned {
  /** for each thing its thread */
  readonly chosen: readonly number[];
  readonly price: number;
  /** no assignment is better: every one was looked at, or shown to be no better without a look */
  readonly isBest: boolean;
}

/** How many threads are in use, and how often one is changed for another. */
export function usesOf(
  { order }: Pick<Assignment, 'order'>,
  chosen: readonly number[],
): { threads: number; changes: number } {
  const changes = order.reduce(
    (sum, thing, i) => sum + (i > 0 && chosen[thing] !== chosen[order[i - 1]] ? 1 : 0),
    0,
  );
  return { threads: new Set(chosen).size, changes };
}

/** What an assignment costs; Infinity where it takes more threads or changes than there may be. */
export function priceOf(puzzle: Assignment, chosen: readonly number[]): number {
  const { own, pairs, clash, perThread, perChange, mostThreads = Infinity, mostChanges = Infinity } = puzzle;
  const { threads, changes } = usesOf(puzzle, chosen);
  if (threads > mostThreads || changes > mostChanges) return Infinity;
  return (
    chosen.reduce((sum, thread, thing) => sum + own[thing][thread], 0) +
    pairs.reduce((sum, { a, b, weight }) => sum + weight * clash[chosen[a]][chosen[b]], 0) +
    perThread * threads +
    perChange * changes
  );
}
