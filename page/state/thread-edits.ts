import type { Dressing } from '../../src/formats/dressing.js';
import { rethreaded, workRethreaded } from '../../src/harmony/threading.js';

/** A thread is taken away: what is sewn in it is sewn in another one. The last thread stays. @param thread from 0 */
export function withoutThread(dressing: Dressing, thread: number, instead: number): Dressing {
  const { threads, treatments, ornaments } = dressing;
  if (threads.length < 2 || thread === instead || !threads[thread] || !threads[instead]) return dressing;
  const exchange = (one: number) => {
    const kept = one === thread ? instead : one;
    return kept > thread ? kept - 1 : kept;
  };
  return {
    ...dressing,
    threads: threads.filter((_, t) => t !== thread),
    treatments: treatments.map((one) => ({ ...one, ...workRethreaded(one, exchange) })),
    ...(ornaments && { ornaments: ornaments.map((one) => rethreaded(one, exchange)) }),
  };
}

/** How many lines and figures are sewn in a thread, at least in part. */
export function usesOf({ treatments, ornaments = [] }: Dressing, thread: number): number {
  const isIn = (one: { readonly thread: number; readonly moreThreads?: readonly number[] }) =>
    one.thread === thread || (one.moreThreads?.includes(thread) ?? false);
  const lines = treatments.filter(
    ({ rows, accents = [], laid }) => [...rows, ...accents].some(isIn) || laid?.thread === thread,
  );
  return lines.length + ornaments.filter(isIn).length;
}
