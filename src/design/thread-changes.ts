import type { Pace } from './pace.js';

/**
 * Minutes that go by before each color stop until its thread is in the needle. A machine with one needle halts before every
 * stop but the first, and each halt counts as a change: which thread goes in is decided there. One with several begins
 * with as many of the threads as it holds, in the order of their use; where one is wanted that it does not hold, that one
 * makes room which is not needed for longest, which makes the fewest changes (L. A. Belady, IBM Systems Journal 5, 1966).
 *
 * @param threads of each stop; null is not known, and taken as different from all others
 */
export function changeTimes(
  threads: readonly (string | null)[],
  { needles, needleSeconds, changeMinutes }: Pick<Pace, 'needles' | 'needleSeconds' | 'changeMinutes'>,
): number[] {
  if (needles === 1) return threads.map((_, i) => (i === 0 ? 0 : changeMinutes));
  const wanted = threads.map((thread, i) => thread ?? i);
  const held = new Set([...new Set(wanted)].slice(0, needles));
  return wanted.map((thread, i) => {
    if (i === 0 || thread === wanted[i - 1]) return 0;
    if (held.has(thread)) return needleSeconds / 60;
    held.delete(lastWanted(held, wanted, i));
    held.add(thread);
    return changeMinutes;
  });
}

/** Of the threads held, the one that is wanted again last, or never. */
function lastWanted<T>(held: ReadonlySet<T>, wanted: readonly T[], from: number): T {
  const next = (thread: T) => {
    const at = wanted.indexOf(thread, from);
    return at < 0 ? Number.POSITIVE_INFINITY : at;
  };
  return [...held].reduce((last, thread) => (next(thread) > next(last) ? thread : last));
}
