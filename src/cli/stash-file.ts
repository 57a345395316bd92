import type { ThreadChoice } from '../formats/dressing.js';
import { decodeText, readInput } from './input-file.js';

/** A maker's own threads from a file. Throws as `readStash`. */
export async function readStashFile(path: string): Promise<readonly ThreadChoice[]> {
  const { readStash } = await import('../formats/stash.js');
  return readStash(decodeText(await readInput(path), path), path);
}
