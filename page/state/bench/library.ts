import type { OwnStitch } from '../../core/bench-messages.js';
import type { GivenFile } from '../../core/messages.js';
import { whileTelling } from '../actions.js';
import { ask } from '../core-call.js';
import { newId, notKept } from '../keep.js';
import { handOver } from '../take-away.js';
import { complaint, history, offers, told } from '../work.js';
import { type Complaint, complaints } from './complaints.js';
import { freeFileName } from './drafts.js';
import { copyOf, freshStitch, nameFor } from './fresh.js';
import { forgetStitch, keepStitch, keptStitches } from './kept-stitches.js';
import { draft, isBenchOpen, layOnBench, ownStitches, renameFile } from './on-bench.js';
import { textOf } from './text.js';

/** The maker's own stitches are put before the built-in ones; before anything is dressed with them. */
export async function takeUpOwn(): Promise<void> {
  try {
    ownStitches.value = await keptStitches();
  } catch (error) {
    notKept.value = String(error);
  }
  if (ownStitches.value.length) complaints.value = await ask('own', { stitches: ownStitches.value });
}

/** What changed is on the shelf, and on the block, at once. */
async function shelve(stitches: readonly OwnStitch[]): Promise<void> {
  ownStitches.value = [...stitches].sort((a, b) => (a.name < b.name ? -1 : 1));
  complaints.value = await ask('own', { stitches: ownStitches.value });
  offers.value = await ask('offers', null);
  const { now } = history.value;
  // the same work, dressed anew; no step of its own
  if (now) history.value = { ...history.value, now: { ...now } };
}

const without = (name: string) => ownStitches.value.filter((one) => one.name !== name);

async function keep(stitch: OwnStitch): Promise<void> {
  await keepStitch(stitch).catch((error: unknown) => {
    notKept.value = String(error);
  });
  await shelve([...without(stitch.name), stitch]);
}

/** The stitch on the bench goes to the maker's own, if its file is sound. */
export const saveStitch = () =>
  whileTelling('Saving', async () => {
    const now = draft.value;
    if (!now) return;
    const text = textOf(now.record);
    const [{ wrong }] = await ask('readOwn', { stitches: [{ name: now.name, text }] });
    complaints.value = wrong;
    if (wrong.length) return;
    const name = await nameToSaveBy({ name: now.name, text });
    if (name !== now.name) {
      renameFile(name);
      complaint.value = {
        where: `${now.name}.json`,
        wrong: `was saved by another tab meanwhile, so this one is saved as ${name}.json`,
        right: 'to look which of the two you want; both are among your own stitches',
      };
    }
    await keep({ name, text });
    told.value = `${now.record.title} is saved among your own stitches`;
  });

/** The name that a stitch has; another where another tab has saved otherwise by that name since this one looked. */
async function nameToSaveBy({ name, text }: OwnStitch): Promise<string> {
  const known = ownStitches.value.find((one) => one.name === name);
  const all = await keptStitches().catch(() => ownStitches.value);
  const there = all.find((one) => one.name === name);
  ownStitches.value = all;
  return !there || there.text === known?.text || there.text === text ? name : freeFileName(name);
}

export const forgetOwn = (name: string) =>
  whileTelling('Taking it away', async () => {
    await forgetStitch(name);
    await shelve(without(name));
    told.value = `${name} is no longer among your own stitches`;
  });

/** Files that the command line reads too; a wrong one is told and never stops the others. */
export const takeInStitches = (files: readonly GivenFile[]) =>
  whileTelling('Taking in', async () => {
    const given = files.map(({ name, bytes }) => ({
      name: nameFor(name.replace(/\.json$/i, '')),
      text: new TextDecoder().decode(bytes),
    }));
    const read = await ask('readOwn', { stitches: given });
    const wrong: Complaint[] = [];
    for (const one of read) {
      if (one.wrong.length) wrong.push(...one.wrong);
      else await keep(one.stitch);
    }
    complaints.value = wrong;
    const taken = read.filter((one) => one.wrong.length === 0).length;
    told.value = `${taken} of ${read.length} taken in`;
  });

/** A stitch as its file, to be laid into a folder of one's own. */
export function handOut({ name, text }: OwnStitch): void {
  handOver(new Blob([text], { type: 'application/json' }), `${name}.json`);
  told.value = `${name}.json is ready`;
}

export const layFresh = (): void => {
  const title = 'My stitch';
  layOnBench({ id: newId(), name: freeFileName(nameFor(title)), record: freshStitch(title) });
};

/** A copy of a stitch in the dictionary, under a title of its own. */
export const layCopy = (name: string, title: string) =>
  whileTelling('Laying it on the bench', async () => {
    const record = copyOf(await ask('stitchFile', { name }), `My ${title.toLowerCase()}`);
    layOnBench({ id: newId(), name: freeFileName(nameFor(record.title)), record });
    isBenchOpen.value = true;
  });

/** One of the maker's own, to be worked on, as it was saved. */
export function layOwn({ name, text }: OwnStitch): void {
  layOnBench({ id: newId(), name, record: JSON.parse(text) });
}
