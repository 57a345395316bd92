import { stamp } from 'virtual:ready';
import type { Picture } from '../core/messages.js';
import { ownId } from './claims.js';
import { keptIn } from './kept-store.js';
import type { Work } from './work.js';

/** The picture of a piece of work as it lies in the browser. */
interface KeptPicture {
  readonly id: string;
  /** what the dressing was, and the page that it was dressed by */
  readonly of: string;
  readonly picture: Picture;
}

const STORE = 'pictures';
/** So many are kept; one that is gone costs a second when its work is opened. */
const MOST = 8;
/** A picture is kept when nothing was changed for so long, ms. */
const QUIET = 1000;

const inStore = keptIn('seamwright pictures', (database) =>
  database.createObjectStore(STORE, { keyPath: 'id' }),
);

/** A page that was built otherwise may draw otherwise. */
const nameOf = ({ dressing }: Work): string => JSON.stringify([dressing, stamp]);

let waiting = 0;

/** Keeps the picture of a piece of work, so that it can be shown at once when the page is opened again. */
export function keepPicture(work: Work, picture: Picture): void {
  clearTimeout(waiting);
  waiting = window.setTimeout(async () => {
    // the demo block is not kept until it is changed
    if (ownId() !== work.id) return;
    try {
      if ((await inStore(STORE, 'readonly', (store) => store.count())) >= MOST) {
        await inStore(STORE, 'readwrite', (store) => store.clear());
      }
      const kept: KeptPicture = { id: work.id, of: nameOf(work), picture };
      await inStore(STORE, 'readwrite', (store) => store.put(kept));
    } catch {
      // without it the page takes a second longer, and nothing is lost
    }
  }, QUIET);
}

/** The picture of the work as it is kept; null where it is not that of this very dressing. */
export async function pictureOfBefore(work: Work): Promise<Picture | null> {
  try {
    const kept = await inStore<KeptPicture | undefined>(STORE, 'readonly', (store) => store.get(work.id));
    return kept?.of === nameOf(work) ? kept.picture : null;
  } catch {
    return null;
  }
}
