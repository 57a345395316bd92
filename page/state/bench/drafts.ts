import { signal } from '@preact/signals';
import { claim } from '../claims.js';
import { newId, notKept } from '../keep.js';
import { forgetDraft, type KeptDraft, keepDraft, keptDrafts } from './kept-stitches.js';
import { type Draft, laid, layOnBench, ownStitches } from './on-bench.js';
import { textOf } from './text.js';

/** Stitches that were worked on and not saved, the latest first; the one on the bench among them. */
export const drafts = signal<readonly KeptDraft[]>([]);

/** Which stitch this tab has on its bench: it outlives a reload of the tab, and a crash. */
const OWN = 'seamwright bench';

const claimed = new Map<string, Promise<boolean>>();
const claimOnce = (id: string): Promise<boolean> => {
  if (!claimed.has(id)) claimed.set(id, claim(`bench ${id}`));
  return claimed.get(id)!;
};

/** A stitch among the maker's own is as it was saved. */
export const isSaved = ({ name, record }: Draft): boolean => {
  const text = textOf(record);
  return ownStitches.value.some((one) => one.name === name && one.text === text);
};

/** The stitch that this tab had on its bench, else the latest that no other tab has; null where there is none. */
export async function draftOfBefore(): Promise<Draft | null> {
  const all = await keptDrafts();
  drafts.value = all.filter((one) => one.isChanged && !isSaved(one));
  const own = sessionStorage.getItem(OWN);
  const inTurn = [...all.filter(({ id }) => id === own), ...all.filter(({ id }) => id !== own)];
  for (const one of inTurn) if (await claimOnce(one.id)) return one;
  return null;
}

/** The stitch on the bench is kept as it is now. */
export async function keepOnBench(draft: Draft): Promise<void> {
  sessionStorage.setItem(OWN, draft.id);
  await claimOnce(draft.id);
  const others = drafts.value.filter(({ id }) => id !== draft.id);
  const isListed = others.length < drafts.value.length;
  const isChanged = !isSaved(draft) && (isListed || draft.record !== laid.value);
  const kept = { ...draft, changedAt: Date.now(), isChanged };
  drafts.value = isChanged ? [kept, ...others] : others;
  await keepDraft(kept);
}

/** What was only looked at needs no keeping once another stitch lies on the bench. */
export async function clearAway(before: Draft): Promise<void> {
  if (!drafts.value.some(({ id }) => id === before.id)) await forgetDraft(before.id);
}

/** Goes on with a stitch that was not finished; with a copy where another tab has it on its bench. */
export async function goOnWithDraft(one: KeptDraft): Promise<void> {
  layOnBench((await claimOnce(one.id)) ? one : { ...one, id: newId() });
}

export async function throwAway(id: string): Promise<void> {
  drafts.value = drafts.value.filter((one) => one.id !== id);
  await forgetDraft(id).catch((error: unknown) => {
    notKept.value = String(error);
  });
}
