import type { Ornament, Values } from '../stitches/stitch.js';
import type { Figures } from './accents.js';
import { checkValues, scaledValues } from './sized.js';

/** An ornament ready to be built at any scale from its least good one to 1. */
export interface SizedOrnament extends Figures {
  readonly least: number;
}

/**
 * An ornament at the size asked for; scaled down with its row, it stays at its smallest good size or above.
 * @param larger by how much its thread makes that size larger than in No. 40
 * @throws InputError when a size asked for is unknown to the ornament or out of its range
 */
export function sizedOrnament(ornament: Ornament, asked: Values, larger = 1): SizedOrnament {
  checkValues(ornament, asked);
  const size = asked.size ?? ornament.parameters.find(({ name }) => name === 'size')!.default;
  const least = Math.min(1, (larger * ornament.smallest.size) / size);
  return { least, build: (scale) => ornament.build(scaledValues(ornament, asked, Math.max(least, scale))) };
}
