import type { ThreadChoice } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import { decodeText, readInput } from './input-file.js';

/**
 * A maker's own threads from a file.
 * @throws InputError when letters of it are lost, for threads are found by their names; and as `readStash`
 */
export async function readStashFile(path: string): Promise<readonly ThreadChoice[]> {
  const { readStash } = await import('../formats/stash.js');
  const text = decodeText(await readInput(path), path);
  const lost = text.indexOf('\u{fffd}');
  if (lost < 0) return readStash(text, path);
  const line = text.slice(0, lost).split(/\r\n|\r|\n/).length;
  const wrong = 'has a letter in an encoding not read here';
  throw new InputError('not-text', `${path} line ${line}`, wrong, 'save it as UTF-8');
}
