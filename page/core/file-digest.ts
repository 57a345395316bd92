import type { Dressing } from '../../src/formats/dressing.js';
import type { GivenFile } from './messages.js';

/**
 * The dressing with what tells its block's file from all others, SHA-256, so that a file that was changed since is noticed.
 * A drawing lies in the dressing itself and needs none. A browser that reckons no digest here leaves it out.
 */
export async function withFileDigest(dressing: Dressing, held: GivenFile | null): Promise<Dressing> {
  if (!held || dressing.block.svg !== undefined || !globalThis.crypto?.subtle) return dressing;
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', held.bytes as BufferSource));
  const hex = Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return { ...dressing, block: { ...dressing.block, digest: `sha256:${hex}` } };
}
