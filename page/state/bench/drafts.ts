import { signal } from '@preact/signals';
import type { Complaint } from '../../core/messages.js';
import { claim } from '../claims.js';
import { newId, notKept } from '../keep.js';
import { complaint } from '../work.js';
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

/** Looks for what was not finished, here or in another tab. @returns all that lies on benches or lay there */
export async function lookForDrafts(): Promise<readonly KeptDraft[]> {
  const all = await keptDrafts();
  drafts.value = all.filter((one) => one.isChanged && !isSaved(one));
  return all;
}

/** The stitch that this tab had on its bench, else the latest that no other tab has; null where there is none. */
export async function draftOfBefore(): Promise<Draft | null> {
  const all = await lookForDrafts();
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

/**
 * Goes on with a stitch that was not finished, as it is by now; with a copy where another tab has it on its bench, and the
 * maker is told so.
 */
export async function goOnWithDraft(one: KeptDraft): Promise<void> {
  const isOwn = await claimOnce(one.id);
  // another tab may have worked on it since this one looked
  const now = (await keptDrafts().catch(() => [])).find(({ id }) => id === one.id) ?? one;
  if (isOwn) return layOnBench(now);
  layOnBench({ id: newId(), name: freeFileName(now.name), record: now.record });
  complaint.value = elsewhere(now, 'so this is a copy of it');
}

/** Throws a stitch away that was not finished, unless another tab is at it. */
export async function throwAway(one: KeptDraft): Promise<void> {
  if (!(await claimOnce(one.id))) {
    complaint.value = elsewhere(one, 'so it stays');
    return;
  }
  drafts.value = drafts.value.filter(({ id }) => id !== one.id);
  await forgetDraft(one.id).catch((error: unknown) => {
    notKept.value = String(error);
  });
}

const elsewhere = ({ record }: Draft, so: string): Complaint => ({
  where: record.title,
  wrong: `lies on the bench of another tab, ${so}`,
  right: 'to go on there, or to close that tab first; neither overwrites what the other has',
});

/** A name for a file that none of the maker's own has, and none that is not finished. */
export function freeFileName(wanted: string): string {
  const taken = new Set([...ownStitches.value, ...drafts.value].map((one) => one.name));
  let name = wanted;
  for (let k = 2; taken.has(name); k++) name = `${wanted}-${k}`;
  return name;
}
