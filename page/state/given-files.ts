import type { GivenFile } from '../core/messages.js';

/** Files as the core takes them. */
export const givenFiles = (files: Iterable<File>): Promise<GivenFile[]> =>
  Promise.all(
    [...files].map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
  );
