import { effect } from '@preact/signals';
import { ask } from '../core-call.js';
import { begun } from '../history.js';
import { notKept } from '../keep.js';
import { clearAway, draftOfBefore, keepOnBench } from './drafts.js';
import {
  benched,
  benchFound,
  benchHistory,
  type Draft,
  draft,
  isBenchOpen,
  laid,
  ownStitches,
} from './on-bench.js';

/** How it sews over all its sizes takes a second: it is looked at when the hand rests, ms. */
const REST = 700;

const telling = (keeping: Promise<unknown>) =>
  keeping.catch((error: unknown) => {
    notKept.value = String(error);
  });

/** Builds and keeps the stitch whenever it changes; while the core is at it only the latest change waits. */
export async function keepBenched(): Promise<void> {
  try {
    const before = await draftOfBefore();
    if (before && !draft.value) {
      laid.value = before.record;
      benchHistory.value = begun(before);
    }
  } catch (error) {
    notKept.value = String(error);
  }
  let next: Draft | null = null;
  let isAtIt = false;
  let last: Draft | null = draft.value;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const build = async () => {
    isAtIt = true;
    while (next) {
      const now: Draft = next;
      next = null;
      const { name, record } = now;
      const got = await ask('bench', { name, record });
      benched.value = got.unit ? got : { ...(benched.value ?? got), wrong: got.wrong };
      await telling(keepOnBench(now));
      if (last && last.id !== now.id) await telling(clearAway(last));
      last = now;
    }
    isAtIt = false;
  };
  const look = async (now: Draft) => {
    const { name, record } = now;
    const found = await ask('benchFindings', { name, record });
    if (draft.value === now) benchFound.value = found;
  };

  effect(() => {
    const now = draft.value;
    // what is saved is kept as saved
    void ownStitches.value;
    if (!now || !isBenchOpen.value) return;
    next = now;
    benchFound.value = null;
    clearTimeout(resting);
    resting = setTimeout(() => void look(now), REST);
    if (!isAtIt) void build();
  });
}
