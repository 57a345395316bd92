import { effect, signal } from '@preact/signals';
import type { Complaint } from '../core/messages.js';
import { claim, ownId, rememberId } from './claims.js';
import { begun } from './history.js';
import { forgetWork, type KeptWork, keepWork, keptWorks } from './kept-works.js';
import { complaint, history, type Work, work } from './work.js';

/** Why the work cannot be kept in this browser, where it cannot. */
export const notKept = signal<string | null>(null);

const claimed = new Map<string, Promise<boolean>>();
const claimOnce = (id: string): Promise<boolean> => {
  if (!claimed.has(id)) claimed.set(id, claim(id));
  return claimed.get(id)!;
};

/** The work that this tab had, else the latest that no other tab has; null where there is none. */
export async function workOfBefore(): Promise<Work | null> {
  try {
    const all = await keptWorks();
    const own = ownId();
    const inTurn = [...all.filter(({ id }) => id === own), ...all.filter(({ id }) => id !== own)];
    for (const { id, work: kept } of inTurn) if (await claimOnce(id)) return kept;
  } catch (error) {
    notKept.value = String(error);
  }
  return null;
}

/** Takes up a piece of work that is kept, as it is by now; a copy of it where another tab has it, and the maker is told so. */
export async function takeUp(one: KeptWork): Promise<Work> {
  const isOwn = await claimOnce(one.id);
  // another tab may have worked on it since this one looked
  const { work: now } = (await keptWorks().catch(() => [])).find(({ id }) => id === one.id) ?? one;
  if (isOwn) return now;
  complaint.value = elsewhere(now, 'so this is a copy of it');
  return { ...now, id: newId() };
}

/** Forgets a piece of work, unless another tab is at it. */
export async function forget({ id, work: kept }: KeptWork): Promise<void> {
  if (await claimOnce(id)) await forgetWork(id);
  else complaint.value = elsewhere(kept, 'so it stays');
}

const elsewhere = ({ dressing }: Work, so: string): Complaint => ({
  where: dressing.block.file.replace(/^.*[/\\]/, ''),
  wrong: `is open in another tab, ${so}`,
  right: 'to go on there, or to close that tab first; neither overwrites what the other has',
});

export const newId = (): string => crypto.randomUUID?.() ?? `${Date.now()}-${Math.random()}`;

/** What is dragged changes from frame to frame, and is written no more often than this, ms. */
const PAUSE = 120;

/**
 * Every change is kept as it happens: while one is being written only the latest waits.
 * @param untouched what needs no keeping as long as nothing is changed: the demo block
 */
export function keepKept(untouched: Work | null): void {
  let next: Work | null = null;
  let isWriting = false;
  const write = async () => {
    isWriting = true;
    while (next) {
      const now: Work = next;
      next = null;
      try {
        rememberId(now.id);
        if (await claimOnce(now.id)) await keepWork({ id: now.id, changedAt: Date.now(), work: now });
        else {
          complaint.value = elsewhere(now, 'so this is a copy of it');
          history.value = begun({ ...now, id: newId() });
        }
      } catch (error) {
        notKept.value = String(error);
      }
      if (history.peek().grip !== null) await new Promise((resolve) => setTimeout(resolve, PAUSE));
    }
    isWriting = false;
  };
  effect(() => {
    next = work.value;
    if (next === untouched) next = null;
    if (next && !isWriting) void write();
  });
}
