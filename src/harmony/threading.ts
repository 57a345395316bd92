import { type ThreadChoice, threadColors, type Work } from '../formats/dressing.js';

interface Threaded {
  readonly thread: number;
  readonly moreThreads?: readonly number[];
}

/** The same figure with each of its threads exchanged for another. */
export function rethreaded<T extends Threaded>(figure: T, exchange: (thread: number) => number): T {
  const { thread, moreThreads } = figure;
  return {
    ...figure,
    thread: exchange(thread),
    ...(moreThreads && { moreThreads: moreThreads.map(exchange) }),
  };
}

/** The same work in other threads. */
export function workRethreaded(
  { rows, accents, laid, ...rest }: Work,
  exchange: (thread: number) => number,
): Work {
  return {
    ...rest,
    rows: rows.map((row) => rethreaded(row, exchange)),
    ...(accents && { accents: accents.map((accent) => rethreaded(accent, exchange)) }),
    ...(laid && { laid: { ...laid, thread: exchange(laid.thread) } }),
  };
}

/** Threads, each in its place; one that is not there yet is added at the end. */
export class ThreadList {
  private readonly threads: ThreadChoice[];

  constructor(start: readonly ThreadChoice[]) {
    this.threads = [...start];
  }

  get list(): readonly ThreadChoice[] {
    return this.threads;
  }

  place(thread: ThreadChoice): number {
    const at = this.threads.findIndex((one) => isSameThread(one, thread));
    return at >= 0 ? at : this.threads.push(thread) - 1;
  }
}

const isSameThread = (a: ThreadChoice, b: ThreadChoice): boolean =>
  a.name === b.name && a.weight === b.weight && `${threadColors(a)}` === `${threadColors(b)}`;
