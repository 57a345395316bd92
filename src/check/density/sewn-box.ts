import type { SewnStitches } from './sewn-stitches.js';
import type { Box } from './tiles.js';

/** The box of all cloth within so many mm of a stitch, in whole mm; null where nothing is sewn. */
export function sewnBox({ ends }: SewnStitches, around: number): Box | null {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < ends.length; i += 2) {
    if (ends[i] < left) left = ends[i];
    if (ends[i] > right) right = ends[i];
    if (ends[i + 1] < top) top = ends[i + 1];
    if (ends[i + 1] > bottom) bottom = ends[i + 1];
  }
  if (left > right) return null;
  return {
    left: Math.floor(left - around),
    top: Math.floor(top - around),
    right: Math.ceil(right + around),
    bottom: Math.ceil(bottom + around),
  };
}
