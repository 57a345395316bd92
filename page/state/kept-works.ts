import { keptIn } from './kept-store.js';
import type { Work } from './work.js';

/** A piece of work as it lies in the browser. */
export interface KeptWork {
  readonly id: string;
  /** milliseconds since 1970, of the last change */
  readonly changedAt: number;
  readonly work: Work;
}

const STORE = 'works';

const inStore = keptIn('seamwright', (database) => database.createObjectStore(STORE, { keyPath: 'id' }));

export const keepWork = (kept: KeptWork): Promise<unknown> =>
  inStore(STORE, 'readwrite', (store) => store.put(kept));

export const forgetWork = (id: string): Promise<unknown> =>
  inStore(STORE, 'readwrite', (store) => store.delete(id));

/** All that is kept, the latest first. */
export async function keptWorks(): Promise<KeptWork[]> {
  const all = await inStore<KeptWork[]>(STORE, 'readonly', (store) => store.getAll());
  return all.sort((a, b) => b.changedAt - a.changedAt);
}
