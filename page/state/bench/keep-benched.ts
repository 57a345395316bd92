import { effect } from '@preact/signals';
import { ask } from '../core-call.js';
import { begun } from '../history.js';
import { notKept } from '../keep.js';
import { keepDraft, keptDraft } from './kept-stitches.js';
import { benched, benchFound, benchHistory, type Draft, draft, isBenchOpen } from './on-bench.js';

/** How it sews over all its sizes takes a second: it is looked at when the hand rests, ms. */
const REST = 700;

/** Builds and keeps the stitch whenever it changes; while the core is at it only the latest change waits. */
export async function keepBenched(): Promise<void> {
  try {
    const before = await keptDraft();
    if (before && !draft.value) benchHistory.value = begun(before);
  } catch (error) {
    notKept.value = String(error);
  }
  let next: Draft | null = null;
  let isAtIt = false;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const build = async () => {
    isAtIt = true;
    while (next) {
      const now: Draft = next;
      next = null;
      const got = await ask('bench', now);
      benched.value = got.unit ? got : { ...(benched.value ?? got), wrong: got.wrong };
      await keepDraft(now).catch((error: unknown) => {
        notKept.value = String(error);
      });
    }
    isAtIt = false;
  };
  const look = async (now: Draft) => {
    const found = await ask('benchFindings', now);
    if (draft.value === now) benchFound.value = found;
  };

  effect(() => {
    const now = draft.value;
    if (!now || !isBenchOpen.value) return;
    next = now;
    benchFound.value = null;
    clearTimeout(resting);
    resting = setTimeout(() => void look(now), REST);
    if (!isAtIt) void build();
  });
}
