import type { Work } from './work.js';

/** A piece of work as it lies in the browser. */
export interface KeptWork {
  readonly id: string;
  /** milliseconds since 1970, of the last change */
  readonly changedAt: number;
  readonly work: Work;
}

const STORE = 'works';

const settled = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const opened = (): Promise<IDBDatabase> => {
  const request = indexedDB.open('seamwright', 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'id' });
  return settled(request);
};

async function inStore<T>(
  mode: IDBTransactionMode,
  does: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const database = await opened();
  try {
    return await settled(does(database.transaction(STORE, mode).objectStore(STORE)));
  } finally {
    database.close();
  }
}

export const keepWork = (kept: KeptWork): Promise<unknown> =>
  inStore('readwrite', (store) => store.put(kept));

export const forgetWork = (id: string): Promise<unknown> => inStore('readwrite', (store) => store.delete(id));

/** All that is kept, the latest first. */
export async function keptWorks(): Promise<KeptWork[]> {
  const all = await inStore<KeptWork[]>('readonly', (store) => store.getAll());
  return all.sort((a, b) => b.changedAt - a.changedAt);
}
