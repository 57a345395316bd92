import { signedArea } from '../geometry/area.js';
import { cyclePoints } from './faces.js';
import type { Network } from './network.js';
import { OUTSIDE, type Regions } from './regions.js';

/**
 * The outer boundary of the patches as half-edges, clockwise; null when the lines close nothing. A closed line with
 * nothing inside is a ring seam and no outline, unless its shape is filled. Where several parts lie side by side the
 * largest has the outline, and `others` counts the rest.
 */
export function outlineOf(
  network: Network,
  { faces, right, outsides }: Regions,
): { readonly outline: readonly number[] | null; readonly others: number } {
  // lines that have a face on either hand: one face with nothing but its border has each of them once
  const linesIn = new Int32Array(faces.length);
  for (const face of right) if (face !== OUTSIDE) linesIn[face]++;
  const blocks = outsides.filter((halfEdges) => {
    const inner = new Set(halfEdges.map((h) => right[h ^ 1]));
    const [face] = inner;
    // a line there and back round nothing
    if (face === OUTSIDE) return false;
    return inner.size > 1 || faces[face].fabric !== null || linesIn[face] > halfEdges.length;
  });
  const sized = blocks.map((halfEdges) => ({
    halfEdges,
    size: -signedArea(cyclePoints(network, halfEdges)),
  }));
  sized.sort((a, b) => b.size - a.size);
  if (!sized.length) return { outline: null, others: 0 };
  return { outline: [...sized[0].halfEdges].reverse().map((h) => h ^ 1), others: sized.length - 1 };
}
