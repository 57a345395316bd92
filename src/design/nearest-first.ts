import Flatbush from 'flatbush';
import { jumpBetween, laterOf, type Walk } from './walk.js';

/** Of so many that are as near the first one is taken. */
const TIED = 4;

/**
 * Pieces from nearest to nearest, beginning with one that waits for none: next comes, of those that may be sewn already, the one that
 * starts nearest to where the needle is. The index is built anew whenever half of its pieces are sewn, so that the search
 * never wades through many of those: n log n where few pieces wait for others.
 */
export function nearestFirst(walk: Walk, first: number): Int32Array {
  const { ends, earlier } = walk;
  const later = laterOf(walk);
  const waiting = earlier.map((pieces) => new Set(pieces).size);
  const sewn = new Uint8Array(earlier.length);
  const order = new Int32Array(earlier.length);
  let open = starts(ends, [...earlier.keys()]);
  let left = earlier.length;
  let piece = first;
  for (let at = 0; at < order.length; at++) {
    if (at > 0) {
      if (2 * left < open.pieces.length)
        open = starts(
          ends,
          open.pieces.filter((one) => !sewn[one]),
        );
      const isReady = (i: number) => sewn[open.pieces[i]] === 0 && waiting[open.pieces[i]] === 0;
      const [x, y] = [ends[4 * piece + 2], ends[4 * piece + 3]];
      piece = open.index
        .neighbors(x, y, TIED, Number.POSITIVE_INFINITY, isReady)
        .map((i) => open.pieces[i])
        .reduce((best, one) => nearer(ends, piece, best, one));
    }
    order[at] = piece;
    sewn[piece] = 1;
    left--;
    for (const next of new Set(later[piece])) waiting[next]--;
  }
  return order;
}

/** Of two pieces the one that starts nearer to where another ends; the first of equals. */
function nearer(ends: Float64Array, from: number, a: number, b: number): number {
  const farther = jumpBetween(ends, from, b) - jumpBetween(ends, from, a);
  return farther < 0 || (farther === 0 && b < a) ? b : a;
}

function starts(
  ends: Float64Array,
  pieces: readonly number[],
): { pieces: readonly number[]; index: Flatbush } {
  const index = new Flatbush(pieces.length);
  for (const piece of pieces) index.add(ends[4 * piece], ends[4 * piece + 1]);
  index.finish();
  return { pieces, index };
}
