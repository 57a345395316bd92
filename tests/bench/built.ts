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

/**
 * Times of so many runs, after one, and after as many more as it takes until the engine has had so long to make the code
 * fast, ms: small work takes many runs to get there, large work is there within its first.
 */
export async function timed(runs: number, work: () => unknown, warming = 0): Promise<Spread> {
  const once = async () => {
    const start = performance.now();
    await work();
    return performance.now() - start;
  };
  const first = await once();
  for (let spent = first; spent < warming; ) spent += await once();
  const times: number[] = [];
  for (let i = 0; i < runs; i++) times.push(await once());
  const sorted = times.sort((a, b) => a - b);
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
