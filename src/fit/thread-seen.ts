import { float64s, int32s } from '../geometry/flat.js';
import { type LineIndex, lineIndex } from '../geometry/line-index.js';
import type { Chain } from './fit.js';

/** Which legs of chains are looked at. */
export interface Looked {
  /** only those that come within so many mm of a place, to both sides of it and up and down */
  readonly around?: { readonly at: readonly [number, number]; readonly within: number };
  /** what the hand leads behind the cloth from stitch to stitch, too: a machine lays it on top */
  readonly behind?: boolean;
}

/** What is seen of chains, to be asked how far it is away. */
export function threadSeen(chains: readonly Chain[], looked: Looked = {}): LineIndex {
  return lineIndex(chains.map((chain) => legsSeen(chain, looked)));
}

/** One polyline for each leg. */
function legsSeen(chain: Chain, { around, behind = false }: Looked): { xy: Float64Array; start: Int32Array } {
  const { kind, path, pathStart } = chain;
  const leads = behind ? leading(chain) : null;
  const xy = float64s(path.length);
  const start = [0];
  let end = 0;
  for (let leg = 0; leg < kind.length; leg++) {
    if (kind[leg] === 'under' && !leads?.(leg)) continue;
    if (around && !comesNear(path, pathStart[leg], pathStart[leg + 1], around)) continue;
    for (let p = 2 * pathStart[leg]; p < 2 * pathStart[leg + 1]; p++) xy[end++] = path[p];
    start.push(end / 2);
  }
  return { xy, start: Int32Array.from(start) };
}

/** Tells legs that lead from other legs to others. */
function leading({ from, to, nodes }: Chain): (leg: number) => boolean {
  const legsAt = int32s(nodes.length / 2);
  for (let leg = 0; leg < from.length; leg++) {
    legsAt[from[leg]]++;
    legsAt[to[leg]]++;
  }
  return (leg) => legsAt[from[leg]] > 1 && legsAt[to[leg]] > 1;
}

function comesNear(
  path: Float64Array,
  first: number,
  end: number,
  { at: [x, y], within }: NonNullable<Looked['around']>,
): boolean {
  let left = Infinity;
  let right = -Infinity;
  let top = Infinity;
  let bottom = -Infinity;
  for (let p = 2 * first; p < 2 * end; p += 2) {
    if (path[p] < left) left = path[p];
    if (path[p] > right) right = path[p];
    if (path[p + 1] < top) top = path[p + 1];
    if (path[p + 1] > bottom) bottom = path[p + 1];
  }
  return left < x + within && right > x - within && top < y + within && bottom > y - within;
}
