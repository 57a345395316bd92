import type { OwnStitch } from '../../core/bench-messages.js';
import { keptIn } from '../kept-store.js';
import type { Draft } from './on-bench.js';

/** What lies on the bench, so that a reload brings it back. */
const DRAFT = 'on the bench';
const STITCHES = 'stitches';
const BENCH = 'bench';

/** A database of its own: no tab that has works open keeps it from being made. */
const inStore = keptIn('seamwright-stitches', (database) => {
  database.createObjectStore(STITCHES, { keyPath: 'name' });
  database.createObjectStore(BENCH);
});

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
