import fc from 'fast-check';
import { expect, it } from 'vitest';
import { usesOf, withoutThread } from '../../page/state/thread-edits.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { dressingArbitrary } from '../formats/dressings.js';

/** The names of the threads that all of a dressing is sewn in, in its order. */
function sewnIn({ threads, treatments, ornaments = [] }: Dressing): string[] {
  const named = ({ thread, moreThreads = [] }: { thread: number; moreThreads?: readonly number[] }) =>
    [thread, ...moreThreads].map((index) => threads[index].name);
  return [
    ...treatments.flatMap(({ rows, accents = [], laid }) => [
      ...rows.flatMap(named),
      ...accents.flatMap(named),
      ...(laid ? named(laid) : []),
    ]),
    ...ornaments.flatMap(named),
  ];
}

const told = (dressing: Dressing): Dressing => ({
  ...dressing,
  threads: dressing.threads.map((one, t) => ({ ...one, name: `thread ${t}` })),
});

it('a thread that is taken away is another one wherever it was sewn, and nothing else changes its thread', () => {
  fc.assert(
    fc.property(dressingArbitrary, fc.nat(3), fc.nat(3), (any, thread, instead) => {
      const dressing = told(any);
      fc.pre(thread < dressing.threads.length && instead < dressing.threads.length && thread !== instead);
      const before = JSON.stringify(dressing);
      const after = withoutThread(dressing, thread, instead);
      expect(after.threads.map(({ name }) => name)).toEqual(
        dressing.threads.map(({ name }) => name).filter((name) => name !== `thread ${thread}`),
      );
      const expected = sewnIn(dressing).map((name) =>
        name === `thread ${thread}` ? `thread ${instead}` : name,
      );
      expect(sewnIn(after)).toEqual(expected);
      expect(JSON.stringify(dressing)).toBe(before);
    }),
  );
});

it('the last thread stays, and none is taken away for itself or for one that is not there', () => {
  fc.assert(
    fc.property(dressingArbitrary, fc.nat(4), (dressing, thread) => {
      const one = { ...dressing, threads: dressing.threads.slice(0, 1) };
      expect(withoutThread(one, 0, 1)).toBe(one);
      expect(withoutThread(dressing, thread, thread)).toBe(dressing);
      expect(withoutThread(dressing, 0, 9)).toBe(dressing);
    }),
  );
});

it('a thread is used where a row, an accent, a line that something is laid on or a figure is sewn in it', () => {
  fc.assert(
    fc.property(dressingArbitrary, fc.nat(3), (any, thread) => {
      const dressing = told(any);
      fc.pre(thread < dressing.threads.length);
      const isSewn = sewnIn(dressing).includes(`thread ${thread}`);
      expect(usesOf(dressing, thread) > 0).toBe(isSewn);
      const all = dressing.treatments.length + (dressing.ornaments?.length ?? 0);
      expect(usesOf(dressing, thread)).toBeLessThanOrEqual(all);
    }),
  );
});
