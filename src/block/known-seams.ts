import { InputError } from '../input-error.js';
import type { SeamMap } from './seam-map.js';

/**
 * The block has a seam of this number.
 * @param where what asks for it, such as '--seam 4'
 * @throws InputError when it has not
 */
export function checkSeam({ seams }: SeamMap, id: number, where: string): void {
  if (id <= seams.length) return;
  throw new InputError(
    'unknown-seam',
    where,
    'the block has no such seam',
    seams.length ? `its seams are 1 to ${seams.length}` : 'it has none',
  );
}
