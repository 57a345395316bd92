import { float32s, float64s, int32s, uint8s, uint16s } from '../geometry/flat.js';
import { groupsOf } from '../geometry/groups.js';
import type { LegKind } from '../stitches/stitch.js';
import type { Chain } from './fit.js';

/** Pieces that lost their connection are dropped when less thread than this is seen of them, mm: a lone holding stitch. */
const SHORTEST_PIECE = 2;
/** More legs than this in one piece show enough without being measured. */
const FEW_LEGS = 8;

/** A leg that stays on the cloth: its new path, and whether it has a new end at its `to`; null when both ends stay. */
export interface Shortened {
  readonly path: readonly number[];
  readonly atTo: boolean | null;
  /** another shortened leg, whose new end this one leads to or from as well */
  readonly endOf?: number;
}

/** A chain without some of its legs, and without the stubs that then hang loose. */
export function withoutLegs(chain: Chain, dropped: (leg: number) => boolean): Chain {
  const kept = uint8s(chain.from.length);
  let stay = 0;
  for (let leg = 0; leg < kept.length; leg++) {
    if (dropped(leg)) continue;
    kept[leg] = 1;
    stay++;
  }
  return stay === kept.length ? chain : withLegs(chain, kept, new Map());
}

/** Length of a path from point `first` to before point `end`, mm. */
export function lengthOf(path: Float64Array | readonly number[], first: number, end: number): number {
  let length = 0;
  for (let k = 2 * first + 2; k < 2 * end; k += 2) {
    const dx = path[k] - path[k - 2];
    const dy = path[k + 1] - path[k - 1];
    length += Math.sqrt(dx * dx + dy * dy);
  }
  return length;
}

/** The legs that are kept, in their order, over nodes numbered anew; shortened ones end at nodes of their own. */
export function withLegs(chain: Chain, kept: Uint8Array, shortened: ReadonlyMap<number, Shortened>): Chain {
  const oldNodes = chain.nodes.length / 2;
  const nodes = float64s(chain.nodes.length + 2 * shortened.size);
  nodes.set(chain.nodes);
  const from = int32s(chain.from.length);
  const to = int32s(chain.to.length);
  from.set(chain.from);
  to.set(chain.to);
  let added = oldNodes;
  for (const [leg, { path, atTo, endOf }] of shortened) {
    if (atTo === null || endOf !== undefined) continue;
    const end = atTo ? path.length - 2 : 0;
    nodes[2 * added] = path[end];
    nodes[2 * added + 1] = path[end + 1];
    if (atTo) to[leg] = added++;
    else from[leg] = added++;
  }
  for (const [leg, { atTo, endOf }] of shortened) {
    if (endOf === undefined) continue;
    const node = shortened.get(endOf)!.atTo ? to[endOf] : from[endOf];
    if (atTo) to[leg] = node;
    else from[leg] = node;
  }
  dropStubs(chain, kept, from, to, added, shortened);

  const legs: number[] = [];
  for (let leg = 0; leg < kept.length; leg++) if (kept[leg]) legs.push(leg);
  const pathStart = int32s(legs.length + 1);
  legs.forEach((leg, i) => {
    const own = chain.pathStart[leg + 1] - chain.pathStart[leg];
    pathStart[i + 1] = pathStart[i] + (shortened.has(leg) ? shortened.get(leg)!.path.length / 2 : own);
  });
  const path = float64s(2 * pathStart[legs.length]);
  for (let i = 0; i < legs.length; ) {
    const short = shortened.get(legs[i]);
    if (short) {
      path.set(short.path, 2 * pathStart[i++]);
      continue;
    }
    // Legs that stay as they are lie one behind another and are copied together.
    let j = i + 1;
    while (j < legs.length && legs[j] === legs[j - 1] + 1 && !shortened.has(legs[j])) j++;
    const block = chain.path.subarray(2 * chain.pathStart[legs[i]], 2 * chain.pathStart[legs[j - 1] + 1]);
    path.set(block, 2 * pathStart[i]);
    i = j;
  }
  const number = int32s(added).fill(-1);
  const placed = float64s(2 * added);
  let used = 0;
  const place = (node: number) => {
    if (number[node] < 0) {
      placed[2 * used] = nodes[2 * node];
      placed[2 * used + 1] = nodes[2 * node + 1];
      number[node] = used++;
    }
    return number[node];
  };
  const newFrom = int32s(legs.length);
  const newTo = int32s(legs.length);
  legs.forEach((leg, i) => {
    newFrom[i] = place(from[leg]);
    newTo[i] = place(to[leg]);
  });
  const legClass = uint16s(legs.length);
  const unit = int32s(legs.length);
  const passes = uint8s(legs.length);
  const size = float32s(legs.length);
  const kind: LegKind[] = [];
  for (let i = 0; i < legs.length; i++) {
    legClass[i] = chain.legClass[legs[i]];
    unit[i] = chain.unit[legs[i]];
    passes[i] = chain.passes[legs[i]];
    size[i] = chain.size[legs[i]];
    kind.push(chain.kind[legs[i]]);
  }
  return {
    ...chain,
    nodes: placed.subarray(0, 2 * used),
    from: newFrom,
    to: newTo,
    legClass,
    unit,
    passes,
    kind,
    size,
    pathStart,
    path,
  };
}

/** Clears from `kept` connected pieces that show less thread than SHORTEST_PIECE, and under-legs that lead nowhere. */
function dropStubs(
  chain: Chain,
  kept: Uint8Array,
  from: Int32Array,
  to: Int32Array,
  nodeCount: number,
  shortened: ReadonlyMap<number, Shortened>,
): void {
  const visible = (leg: number) => chain.kind[leg] !== 'under';
  const degree = int32s(nodeCount);
  for (let leg = 0; leg < kept.length; leg++) {
    if (!kept[leg]) continue;
    degree[from[leg]]++;
    degree[to[leg]]++;
  }
  for (let changed = true; changed; ) {
    changed = false;
    for (let leg = 0; leg < kept.length; leg++) {
      if (!kept[leg] || visible(leg) || (degree[from[leg]] > 1 && degree[to[leg]] > 1)) continue;
      kept[leg] = 0;
      degree[from[leg]]--;
      degree[to[leg]]--;
      changed = true;
    }
  }
  const { of: root, join } = groupsOf(nodeCount);
  for (let leg = 0; leg < kept.length; leg++) if (kept[leg]) join(from[leg], to[leg]);
  let piece = -1;
  let pieces = 0;
  for (let leg = 0; leg < kept.length && pieces < 2; leg++) {
    if (!kept[leg] || root(from[leg]) === piece) continue;
    piece = root(from[leg]);
    pieces++;
  }
  if (pieces < 2 && kept.length > FEW_LEGS) return;
  const shown = float64s(nodeCount);
  for (let leg = 0; leg < kept.length; leg++) {
    if (!kept[leg] || !visible(leg)) continue;
    const short = shortened.get(leg)?.path;
    shown[root(from[leg])] +=
      chain.kind[leg] === 'knot'
        ? SHORTEST_PIECE
        : short
          ? lengthOf(short, 0, short.length / 2)
          : lengthOf(chain.path, chain.pathStart[leg], chain.pathStart[leg + 1]);
  }
  let most = 0;
  for (const one of shown) most = Math.max(most, one);
  for (let leg = 0; leg < kept.length; leg++) {
    const own = shown[root(from[leg])];
    // One piece stays, the one that shows most: a treatment is never left to be joined by a jump.
    if (kept[leg] && (own < SHORTEST_PIECE || own < most)) kept[leg] = 0;
  }
}
