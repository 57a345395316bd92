import { batch } from '@preact/signals';
import type { Role } from '../../src/block/roles/role.js';
import type { Dressing } from '../../src/formats/dressing.js';
import type { GivenFile } from '../core/messages.js';
import { ask, askAbout, Refused } from './core-call.js';
import { changed, letGo, redone, undone } from './history.js';
import { newId, takeUp } from './keep.js';
import type { KeptWork } from './kept-works.js';
import { busy, complaint, history, told, touched, type Work, work } from './work.js';

/** What is asked takes a while: the maker is told, and what goes wrong is told as well. */
export async function whileTelling<T>(what: string, doing: () => Promise<T>): Promise<T | null> {
  busy.value = what;
  complaint.value = null;
  try {
    return await doing();
  } catch (error) {
    complaint.value =
      error instanceof Refused
        ? error.complaint
        : { where: 'Seamwright', wrong: String(error), right: 'your work is as it was' };
    return null;
  } finally {
    busy.value = null;
  }
}

/** Opens what was dropped or chosen: a block, a dressing, or a dressing and its block. */
export const openFiles = (files: readonly GivenFile[]) =>
  whileTelling(`Opening ${files[0].name}`, async () => {
    const [file, beside] = files;
    const { dressing, roles, why, findings } = await ask('open', { file, beside, seed: 1 });
    const isChanged = findings.some(({ code }) => code === 'block-changed');
    const held = dressing.block.svg === undefined ? blockAmong(files) : null;
    batch(() => {
      touched.value = null;
      become({ id: newId(), dressing, file: held, roles, named: [], why, hidden: [] });
      told.value = `${dressing.block.file} is open, ${dressing.treatments.length} lines dressed`;
      if (isChanged) {
        complaint.value = {
          where: dressing.block.file,
          wrong: 'has changed since this work was saved',
          right:
            'to look whether each seam has what it should have: they were found again by their middle and ends',
        };
      }
    });
  });

const blockAmong = (files: readonly GivenFile[]): GivenFile | null =>
  files.find(({ name }) => !name.toLowerCase().endsWith('.json')) ?? null;

/** The maker says what a color stop of her file is: the block is read anew. */
export const nameRole = (stop: number, role: Role) =>
  whileTelling('Reading the block anew', async () => {
    const now = work.value;
    if (!now?.file) return;
    const named = [...new Map([...now.named, [stop, role] as const])];
    const { dressing, roles, why } = await ask('open', {
      file: now.file,
      roles: named,
      seed: now.dressing.seed,
    });
    become({ ...now, dressing, roles, named, why });
    told.value = `Stop ${stop} is taken anew, ${dressing.treatments.length} lines dressed`;
  });

/** Goes on with a piece of work that is kept in the browser. */
export async function goOnWith(kept: KeptWork): Promise<void> {
  const now = await takeUp(kept);
  touched.value = null;
  become(now);
}

/** Mixes the block again with the next seed; what is pinned stays. */
export const mixAgain = () =>
  whileTelling('Mixing', async () => {
    for (let isMixed = false; !isMixed; ) {
      const now = work.value;
      if (!now) return;
      const seed = now.dressing.seed + 1;
      const { dressing, why } = await askAbout(now.file, 'mix', { dressing: now.dressing, seed });
      // what was changed meanwhile is mixed too, and not lost
      isMixed = work.value === now;
      if (isMixed) become({ ...now, dressing, why });
    }
    told.value = 'The block is mixed anew';
  });

/** @param grip changes that follow each other by the same grip are undone together */
export function change(edit: (dressing: Dressing) => Dressing, grip: string | null = null): void {
  const now = work.value;
  if (!now) return;
  const dressing = edit(now.dressing);
  if (dressing !== now.dressing) become({ ...now, dressing }, grip);
}

export function become(next: Work, grip: string | null = null): void {
  history.value = changed(history.value, next, grip);
}

export const release = (): void => {
  history.value = letGo(history.value);
};

export function undo(): void {
  if (!history.value.past.some(Boolean)) return;
  history.value = undone(history.value);
  told.value = 'Undone';
}

export function redo(): void {
  history.value = redone(history.value);
  told.value = 'Done again';
}
