import { demoFiles } from '../core/demo.js';
import { openFiles } from './actions.js';
import { keepBenched } from './bench/keep-benched.js';
import { takeUpOwn } from './bench/library.js';
import { ask } from './core-call.js';
import { keepBare } from './drawing/board.js';
import { keepPhoto } from './drawing/photo.js';
import { listenToDrops } from './drop.js';
import { begun } from './history.js';
import { keepKept, workOfBefore } from './keep.js';
import { keepDressed } from './keep-dressed.js';
import { listenToKeys } from './keys.js';
import { keepLooking } from './look.js';
import { figures, history, offers, work } from './work.js';

/** The page begins: with the work that was on it, else with the demo block. */
export async function begin(): Promise<void> {
  await takeUpOwn();
  const before = await workOfBefore();
  if (before) history.value = begun(before);
  keepDressed();
  keepLooking();
  keepBare();
  keepPhoto();
  listenToKeys();
  listenToDrops();
  if (!before) await openFiles(demoFiles());
  keepKept(before ? null : work.value);
  void keepBenched();
  offers.value = await ask('offers', null);
  figures.value = await ask('figures', null);
}
