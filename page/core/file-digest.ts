import type { BlockSource, Dressing } from '../../src/formats/dressing.js';
import type { GivenFile } from './messages.js';

/**
 * The dressing with what tells its block's file from all others, SHA-256, so that a file that was changed since is noticed.
 * A drawing lies in the dressing itself and needs none. A browser that reckons no digest here leaves it out.
 */
export async function withFileDigest(dressing: Dressing, held: GivenFile | null): Promise<Dressing> {
  if (!held || dressing.block.svg !== undefined) return dressing;
  const digest = await digestOf(held);
  return digest === null ? dressing : { ...dressing, block: { ...dressing.block, digest } };
}

/** Whether a block's file is another than when the dressing was saved; not where the browser cannot tell. */
export async function hasChanged({ digest }: BlockSource, file: GivenFile | undefined): Promise<boolean> {
  if (digest === undefined || !file) return false;
  const now = await digestOf(file);
  return now !== null && now !== digest;
}

async function digestOf({ bytes }: GivenFile): Promise<string | null> {
  if (!globalThis.crypto?.subtle) return null;
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes as BufferSource));
  return `sha256:${Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
