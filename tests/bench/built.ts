import { createHash } from 'node:crypto';

const dist = new URL('../../dist/', import.meta.url);

/** A module as it is built, which is how users run it. */
export const built = <Module>(path: string): Promise<Module> => import(new URL(path, dist).href);

/** Where a built file lies. */
export const builtPath = (path: string): string => new URL(path, dist).pathname;

/** Least, median and most of several times, ms. */
export interface Spread {
  readonly least: number;
  readonly median: number;
  readonly most: number;
}

export async function timed(runs: number, work: () => unknown): Promise<Spread> {
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return spreadOf(times);
}

export function spreadOf(times: readonly number[]): Spread {
  const sorted = [...times].sort((a, b) => a - b);
  return { least: sorted[0], median: sorted[sorted.length >> 1], most: sorted[sorted.length - 1] };
}

export const ms = ({ least, median, most }: Spread): string =>
  `${median.toFixed(1)} ms (${least.toFixed(1)} to ${most.toFixed(1)})`;

/** So that a faster answer is known to be the same answer. */
export const checksum = (bytes: Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex').slice(0, 12);
