import { createHash } from 'node:crypto';

/** What tells a file's bytes from all others: SHA-256, as a dressing keeps it. */
export const digestOf = (bytes: Uint8Array): string =>
  `sha256:${createHash('sha256').update(bytes).digest('hex')}`;
