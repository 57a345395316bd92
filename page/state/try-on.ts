import type { Line, Offered, Tried } from '../core/messages.js';
import { ask } from './core-call.js';
import { work } from './work.js';

let last: Promise<unknown> = Promise.resolve();

/**
 * An offer worked on a line; one after the other, so that what the maker asks for meanwhile waits for no more than one.
 * @param isWanted asked when its turn comes: a card that is out of sight again needs no picture
 */
export function tryOn(line: Line, offer: Offered, isWanted: () => boolean): Promise<Tried | null> {
  const turn = last.then(async () => {
    const dressing = work.value?.dressing;
    return dressing && isWanted() ? ask('try', { dressing, line, offer }).catch(() => null) : null;
  });
  last = turn;
  return turn;
}
