import type { Dressing, ThreadChoice } from '../formats/dressing.js';

/** What names its threads: the first, and further ones where it has several. */
export interface Threaded {
  readonly thread: number;
  readonly moreThreads?: readonly number[];
}

/** The thread of a figure's nth thread; those not named take the first. */
export function threadOf(
  { threads }: Pick<Dressing, 'threads'>,
  { thread, moreThreads = [] }: Threaded,
  nth: number,
): ThreadChoice {
  return threads[nth === 0 ? thread : (moreThreads[nth - 1] ?? thread)];
}

/** A title that says which of several threads a color stop is. */
export const withThread = (title: string, thread: string): string => (thread ? `${title}, ${thread}` : title);
