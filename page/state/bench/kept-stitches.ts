import type { OwnStitch } from '../../core/bench-messages.js';
import { keptIn } from '../kept-store.js';
import type { Draft } from './on-bench.js';

const STITCHES = 'stitches';
const BENCH = 'bench';

/** A stitch as it lies on the bench, or lay there, so that it can be gone on with. */
export interface KeptDraft extends Draft {
  /** milliseconds since 1970, of the last change */
  readonly changedAt: number;
  /** it was worked on since it was laid there */
  readonly isChanged: boolean;
}

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

/** All that lies on benches or lay there, the latest first. */
export async function keptDrafts(): Promise<KeptDraft[]> {
  const all = await inStore<Partial<KeptDraft>[]>(BENCH, 'readonly', (store) => store.getAll());
  // one of an older page has no number, and cannot be told from others
  const known = all.filter((one): one is KeptDraft => typeof one.id === 'string');
  return known.sort((a, b) => b.changedAt - a.changedAt);
}

export const keepDraft = (draft: KeptDraft): Promise<unknown> =>
  inStore(BENCH, 'readwrite', (store) => store.put(draft, draft.id));

export const forgetDraft = (id: string): Promise<unknown> =>
  inStore(BENCH, 'readwrite', (store) => store.delete(id));
