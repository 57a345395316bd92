import type { OwnStitch } from '../../core/bench-messages.js';
import type { Draft } from './on-bench.js';

/** What lies on the bench, so that a reload brings it back. */
const DRAFT = 'on the bench';
const STITCHES = 'stitches';
const BENCH = 'bench';

const settled = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** A database of its own: no tab that has works open keeps it from being made. */
const opened = (): Promise<IDBDatabase> => {
  const request = indexedDB.open('seamwright-stitches', 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore(STITCHES, { keyPath: 'name' });
    request.result.createObjectStore(BENCH);
  };
  return settled(request);
};

async function inStore<T>(
  store: string,
  mode: IDBTransactionMode,
  does: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const database = await opened();
  try {
    return await settled(does(database.transaction(store, mode).objectStore(store)));
  } finally {
    database.close();
  }
}

/** The maker's own stitches, by name. */
export const keptStitches = (): Promise<OwnStitch[]> =>
  inStore<OwnStitch[]>(STITCHES, 'readonly', (store) => store.getAll());

export const keepStitch = (stitch: OwnStitch): Promise<unknown> =>
  inStore(STITCHES, 'readwrite', (store) => store.put(stitch));

export const forgetStitch = (name: string): Promise<unknown> =>
  inStore(STITCHES, 'readwrite', (store) => store.delete(name));

export const keptDraft = (): Promise<Draft | undefined> =>
  inStore<Draft | undefined>(BENCH, 'readonly', (store) => store.get(DRAFT));

export const keepDraft = (draft: Draft): Promise<unknown> =>
  inStore(BENCH, 'readwrite', (store) => store.put(draft, DRAFT));
