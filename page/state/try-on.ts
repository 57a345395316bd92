import type { Line, Offered, Tried } from '../core/messages.js';
import { askAbout } from './core-call.js';
import { work } from './work.js';

let last: Promise<unknown> = Promise.resolve();

/**
 * An offer worked on a line; one after the other, so that what the maker asks for meanwhile waits for no more than one.
 * @param isWanted asked when its turn comes: a card that is out of sight again needs no picture
 */
export function tryOn(line: Line, offer: Offered, isWanted: () => boolean): Promise<Tried | null> {
  const turn = last.then(async () => {
    const now = work.value;
    if (!now || !isWanted()) return null;
    return askAbout(now.file, 'try', { dressing: now.dressing, line, offer }).catch(() => null);
  });
  last = turn;
  return turn;
}
