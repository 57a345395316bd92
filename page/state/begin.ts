import ready from 'virtual:ready';
import { batch } from '@preact/signals';
import { unpacked } from '../core/pack.js';
import type { Ready } from '../core/ready.js';
import { keepBenched } from './bench/keep-benched.js';
import { takeUpOwn } from './bench/library.js';
import { ask } from './core-call.js';
import { keepBare } from './drawing/board.js';
import { keepPhoto } from './drawing/photo.js';
import { listenToDrops } from './drop.js';
import { begun } from './history.js';
import { keepKept, newId, workOfBefore } from './keep.js';
import { keepDressed } from './keep-dressed.js';
import { pictureOfBefore } from './keep-picture.js';
import { listenToKeys } from './keys.js';
import { keepLooking } from './look.js';
import { firstShown } from './painter.js';
import { figures, history, offers, picture, pictured, work } from './work.js';

/** The page begins: with the work that was on it, else with the demo block; their pictures are there before the core is. */
export async function begin(): Promise<void> {
  const isOwnThere = takeUpOwn();
  const before = await workOfBefore();
  const { dressing, ...shown } = unpacked<Ready>(ready);
  const known = before ? await pictureOfBefore(before) : shown.picture;
  batch(() => {
    offers.value = shown.offers;
    figures.value = shown.figures;
    picture.value = known;
    history.value = begun(
      before ?? { id: newId(), dressing, file: null, roles: null, named: [], why: [], hidden: [] },
    );
    if (known) pictured.value = work.value;
  });
  listenToKeys();
  listenToDrops();
  keepKept(before ? null : work.value);
  if (picture.value) await firstShown;
  await isOwnThere;
  keepDressed();
  keepLooking();
  keepBare();
  keepPhoto();
  void keepBenched();
  offers.value = await ask('offers', null);
}
