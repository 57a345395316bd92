import { linesOf } from './lines-near.js';
import { lineTitle } from './words.js';
import { picture, told, touched } from './work.js';

/** The next line of the block is touched, or the one before, round and round. */
export function nextLine(step: 1 | -1): void {
  if (!picture.value) return;
  const lines = linesOf(picture.value.block);
  if (lines.length === 0) return;
  const at = touched.value === null ? (step > 0 ? -1 : 0) : lines.indexOf(touched.value);
  const line = lines[(at + step + lines.length) % lines.length];
  touched.value = line;
  told.value = `${lineTitle(line)} touched`;
}
