import type { Arithmetic } from '../../../src/stitches/stitch-record.js';

/** What was typed as a coordinate or a size: a number where it is one, else arithmetic. */
export function typed(text: string): Arithmetic {
  const plain = text.trim().replace(',', '.');
  return plain !== '' && Number.isFinite(Number(plain)) ? Number(plain) : text.trim();
}
