import { demoFiles } from '../core/demo.js';
import { openFiles } from './actions.js';
import { ask } from './core-call.js';
import { listenToDrops } from './drop.js';
import { keepDressed } from './keep-dressed.js';
import { listenToKeys } from './keys.js';
import { offers, work } from './work.js';

/** The page begins: with the work that was on it, else with the demo block. */
export async function begin(): Promise<void> {
  keepDressed();
  listenToKeys();
  listenToDrops();
  if (!work.value) await openFiles(demoFiles());
  offers.value = await ask('offers', null);
}
