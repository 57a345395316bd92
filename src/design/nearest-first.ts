import Flatbush from 'flatbush';
import { laterOf, type Walk } from './walk.js';

/**
 * Pieces from nearest to nearest, beginning with the first: next comes, of those that may be sewn already, the one that
 * starts nearest to where the needle is. The index is built anew whenever half of its pieces are sewn, so that the search
 * never wades through many of those: n log n where few pieces wait for others.
 */
export function nearestFirst(walk: Walk): Int32Array {
  const { ends, earlier } = walk;
  const later = laterOf(walk);
  const waiting = earlier.map((pieces) => new Set(pieces).size);
  const sewn = new Uint8Array(earlier.length);
  const order = new Int32Array(earlier.length);
  let open = starts(ends, [...earlier.keys()]);
  let left = earlier.length;
  let piece = 0;
  for (let at = 0; at < order.length; at++) {
    if (at > 0) {
      if (2 * left < open.pieces.length)
        open = starts(
          ends,
          open.pieces.filter((one) => !sewn[one]),
        );
      const isReady = (i: number) => sewn[open.pieces[i]] === 0 && waiting[open.pieces[i]] === 0;
      const [x, y] = [ends[4 * piece + 2], ends[4 * piece + 3]];
      piece = open.pieces[open.index.neighbors(x, y, 1, Number.POSITIVE_INFINITY, isReady)[0]];
    }
    order[at] = piece;
    sewn[piece] = 1;
    left--;
    for (const next of new Set(later[piece])) waiting[next]--;
  }
  return order;
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
