import type { Work } from '../../src/formats/dressing.js';

/**
 * The same work in threads that a dressing has.
 * @param threads how many it has
 * @param first which of them is the work's first; the others follow on
 */
export function withThreads(work: Work, threads: number, first = 0): Work {
  const known = (thread: number) => (thread + first) % Math.max(1, threads);
  const change = <T extends { thread: number; moreThreads?: readonly number[] }>(one: T): T => ({
    ...one,
    thread: known(one.thread),
    ...(one.moreThreads && { moreThreads: one.moreThreads.map(known) }),
  });
  return {
    ...work,
    rows: work.rows.map(change),
    ...(work.accents && { accents: work.accents.map(change) }),
    ...(work.laid && { laid: { ...work.laid, thread: known(work.laid.thread) } }),
  };
}
