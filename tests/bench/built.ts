import { createHash } from 'node:crypto';

const dist = new URL('../../dist/', import.meta.url);

/** A module as it is built, which is how users run it. */
export const built = <Module>(path: string): Promise<Module> => import(new URL(path, dist).href);

/** Where a built file lies. */
export const builtPath = (path: string): string => new URL(path, dist).pathname;

/** The first of several times, when the engine has not yet made the code fast, and least, median and most of the others; ms. */
export interface Spread {
  readonly first: number;
  readonly least: number;
  readonly median: number;
  readonly most: number;
}

/** Times of so many runs, after one. */
export async function timed(runs: number, work: () => unknown): Promise<Spread> {
  const times: number[] = [];
  for (let i = 0; i <= runs; i++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  const [first, ...others] = times;
  const sorted = others.sort((a, b) => a - b);
  return { first, least: sorted[0], median: sorted[runs >> 1], most: sorted[runs - 1] };
}

export const ms = ({ least, median, most }: Spread): string =>
  `${median.toFixed(1)} ms (${least.toFixed(1)} to ${most.toFixed(1)})`;

/** The same with the first time, for work that a run does once. */
export const msAndFirst = (spread: Spread): string =>
  `${ms(spread)}, the first time ${spread.first.toFixed(0)} ms`;

/** So that a faster answer is known to be the same answer. */
export const checksum = (bytes: Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex').slice(0, 12);
