import type { Point } from '../geometry/point.js';
import type { LegKind } from '../stitches/stitch.js';
import type { Chain } from './fit.js';

/** The cloth on one side of a straight line: points p with (p - at) . normal >= 0. */
export interface HalfPlane {
  readonly at: Point;
  readonly normal: Point;
}

/** Cloth a treatment must stay on at one end: inside all its half planes, or inside any of them. */
export interface Cut {
  readonly planes: readonly HalfPlane[];
  readonly all: boolean;
}

/** What is left of a cut leg is dropped below this length, mm: a stitch that short only makes a lump. */
const SHORTEST_STUB = 0.8;
/** Pieces that lost their connection are dropped when less thread than this is seen of them, mm: a lone holding stitch. */
const SHORTEST_PIECE = 2;
/** More legs than this in one piece show enough without being measured. */
const FEW_LEGS = 8;
/** Figures that lose their shape when cut: they are left out whole. */
const WHOLE: ReadonlySet<LegKind> = new Set<LegKind>(['loop', 'knot', 'petal', 'cord']);

/**
 * A chain cut to the cloth it may lie on: straights and curves end at the line, figures that cross it are left out,
 * and what then hangs loose as a mere stub goes too. Linear in the legs.
 */
export function cutChain(chain: Chain, cuts: readonly Cut[]): Chain {
  const allowed = (x: number, y: number) => cuts.every((cut) => onCloth(cut, x, y));
  const nodeCount = chain.nodes.length / 2;
  const nodeIn = new Uint8Array(nodeCount);
  let within = 0;
  for (let i = 0; i < nodeCount; i++) {
    if (!allowed(chain.nodes[2 * i], chain.nodes[2 * i + 1])) continue;
    nodeIn[i] = 1;
    within++;
  }
  const kept = new Uint8Array(chain.from.length).fill(1);
  const shortened = new Map<number, Shortened>();
  for (let leg = 0; leg < kept.length; leg++) {
    const fromIn = nodeIn[chain.from[leg]] === 1;
    const toIn = nodeIn[chain.to[leg]] === 1;
    if (fromIn && toIn) {
      // a curve or a loop may belly over the line between two holes that do not
      if (!bellies(chain, leg, allowed)) continue;
      const path = chain.path.slice(2 * chain.pathStart[leg], 2 * chain.pathStart[leg + 1]);
      if (!WHOLE.has(chain.kind[leg]) && drawnIn(path, allowed)) {
        shortened.set(leg, { path: [...path], atTo: null });
      } else kept[leg] = 0;
      continue;
    }
    kept[leg] = 0;
    if (fromIn === toIn || WHOLE.has(chain.kind[leg]) || chain.kind[leg] === 'under') continue;
    const path = chain.path.subarray(2 * chain.pathStart[leg], 2 * chain.pathStart[leg + 1]);
    const part = keptPart(path, fromIn, allowed);
    if (lengthOf(part, 0, part.length / 2) < SHORTEST_STUB) continue;
    kept[leg] = 1;
    shortened.set(leg, { path: part, atTo: fromIn });
  }
  if (within === nodeCount && shortened.size === 0 && kept.every((is) => is === 1)) return chain;
  return withLegs(chain, kept, shortened);
}

function bellies(chain: Chain, leg: number, allowed: (x: number, y: number) => boolean): boolean {
  for (let k = chain.pathStart[leg] + 1; k + 1 < chain.pathStart[leg + 1]; k++) {
    if (!allowed(chain.path[2 * k], chain.path[2 * k + 1])) return true;
  }
  return false;
}

/** Draws the points of a path that lie off the cloth in towards its chord; false when even that is not on it. */
function drawnIn(path: Float64Array, allowed: (x: number, y: number) => boolean): boolean {
  const n = path.length / 2;
  const [x0, y0, x1, y1] = [path[0], path[1], path[2 * n - 2], path[2 * n - 1]];
  for (let k = 1; k + 1 < n; k++) {
    const [x, y] = [path[2 * k], path[2 * k + 1]];
    if (allowed(x, y)) continue;
    const t = k / (n - 1);
    const [cx, cy] = [x0 + t * (x1 - x0), y0 + t * (y1 - y0)];
    if (!allowed(cx, cy)) return false;
    let inside = 0;
    let outside = 1;
    for (let step = 0; step < 20; step++) {
      const middle = (inside + outside) / 2;
      if (allowed(cx + middle * (x - cx), cy + middle * (y - cy))) inside = middle;
      else outside = middle;
    }
    path[2 * k] = cx + inside * (x - cx);
    path[2 * k + 1] = cy + inside * (y - cy);
  }
  return true;
}

/** A chain without some of its legs, and without the stubs that then hang loose. */
export function withoutLegs(chain: Chain, dropped: (leg: number) => boolean): Chain {
  const kept = new Uint8Array(chain.from.length).map((_, leg) => (dropped(leg) ? 0 : 1));
  return kept.every((is) => is === 1) ? chain : withLegs(chain, kept, new Map());
}

export function onCloth(cut: Cut, x: number, y: number): boolean {
  const inside = ({ at, normal }: HalfPlane) => (x - at[0]) * normal[0] + (y - at[1]) * normal[1] >= -1e-9;
  return cut.all ? cut.planes.every(inside) : cut.planes.some(inside);
}

/** A leg that stays on the cloth: its new path, and whether it has a new end at its `to`; null when both ends stay. */
interface Shortened {
  readonly path: readonly number[];
  readonly atTo: boolean | null;
}

/** The part of a path on the cloth side of its first crossing, as seen from the end that is on the cloth. */
function keptPart(
  path: Float64Array,
  fromStart: boolean,
  allowed: (x: number, y: number) => boolean,
): number[] {
  const n = path.length / 2;
  const order = fromStart ? (k: number) => k : (k: number) => n - 1 - k;
  const kept: number[] = [];
  for (let k = 0; k < n; k++) {
    const x = path[2 * order(k)];
    const y = path[2 * order(k) + 1];
    if (allowed(x, y)) {
      kept.push(x, y);
      continue;
    }
    const [x0, y0] = kept.slice(-2);
    let inside = 0;
    let outside = 1;
    // Halving finds the crossing to a ten-thousandth of the chord, whatever bounds the cloth.
    for (let step = 0; step < 20; step++) {
      const middle = (inside + outside) / 2;
      if (allowed(x0 + middle * (x - x0), y0 + middle * (y - y0))) inside = middle;
      else outside = middle;
    }
    kept.push(x0 + inside * (x - x0), y0 + inside * (y - y0));
    break;
  }
  if (fromStart) return kept;
  const back: number[] = [];
  for (let k = kept.length - 2; k >= 0; k -= 2) back.push(kept[k], kept[k + 1]);
  return back;
}

function lengthOf(path: Float64Array | readonly number[], first: number, end: number): number {
  let length = 0;
  for (let k = 2 * first + 2; k < 2 * end; k += 2) {
    length += Math.hypot(path[k] - path[k - 2], path[k + 1] - path[k - 1]);
  }
  return length;
}

/** The legs that are kept, in their order, over nodes numbered anew; shortened ones end at nodes of their own. */
function withLegs(chain: Chain, kept: Uint8Array, shortened: ReadonlyMap<number, Shortened>): Chain {
  const oldNodes = chain.nodes.length / 2;
  const nodes = new Float64Array(chain.nodes.length + 2 * shortened.size);
  nodes.set(chain.nodes);
  const from = chain.from.slice();
  const to = chain.to.slice();
  let added = oldNodes;
  for (const [leg, { path, atTo }] of shortened) {
    if (atTo === null) continue;
    const end = atTo ? path.length - 2 : 0;
    nodes[2 * added] = path[end];
    nodes[2 * added + 1] = path[end + 1];
    if (atTo) to[leg] = added++;
    else from[leg] = added++;
  }
  dropStubs(chain, kept, from, to, added, shortened);

  const legs: number[] = [];
  for (let leg = 0; leg < kept.length; leg++) if (kept[leg]) legs.push(leg);
  const pathStart = new Int32Array(legs.length + 1);
  legs.forEach((leg, i) => {
    const own = chain.pathStart[leg + 1] - chain.pathStart[leg];
    pathStart[i + 1] = pathStart[i] + (shortened.has(leg) ? shortened.get(leg)!.path.length / 2 : own);
  });
  const path = new Float64Array(2 * pathStart[legs.length]);
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
  const number = new Int32Array(added).fill(-1);
  const placed = new Float64Array(2 * added);
  let used = 0;
  const place = (node: number) => {
    if (number[node] < 0) {
      placed.set(nodes.subarray(2 * node, 2 * node + 2), 2 * used);
      number[node] = used++;
    }
    return number[node];
  };
  const newFrom = new Int32Array(legs.length);
  const newTo = new Int32Array(legs.length);
  legs.forEach((leg, i) => {
    newFrom[i] = place(from[leg]);
    newTo[i] = place(to[leg]);
  });
  const legClass = new Uint16Array(legs.length);
  const unit = new Int32Array(legs.length);
  const passes = new Uint8Array(legs.length);
  const size = new Float32Array(legs.length);
  const kind: LegKind[] = [];
  for (let i = 0; i < legs.length; i++) {
    legClass[i] = chain.legClass[legs[i]];
    unit[i] = chain.unit[legs[i]];
    passes[i] = chain.passes[legs[i]];
    size[i] = chain.size[legs[i]];
    kind.push(chain.kind[legs[i]]);
  }
  return {
    units: chain.units,
    closed: chain.closed,
    nodes: placed.slice(0, 2 * used),
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
  const degree = new Int32Array(nodeCount);
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
  const parent = Int32Array.from({ length: nodeCount }, (_, i) => i);
  const root = (node: number): number => {
    let top = node;
    while (parent[top] !== top) top = parent[top];
    for (let at = node; parent[at] !== top; ) {
      const next = parent[at];
      parent[at] = top;
      at = next;
    }
    return top;
  };
  for (let leg = 0; leg < kept.length; leg++) if (kept[leg]) parent[root(from[leg])] = root(to[leg]);
  let piece = -1;
  let pieces = 0;
  for (let leg = 0; leg < kept.length && pieces < 2; leg++) {
    if (!kept[leg] || root(from[leg]) === piece) continue;
    piece = root(from[leg]);
    pieces++;
  }
  if (pieces < 2 && kept.length > FEW_LEGS) return;
  const shown = new Float64Array(nodeCount);
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
  const most = shown.reduce((a, b) => Math.max(a, b), 0);
  for (let leg = 0; leg < kept.length; leg++) {
    const own = shown[root(from[leg])];
    // One piece stays, the one that shows most: a treatment is never left to be joined by a jump.
    if (kept[leg] && (own < SHORTEST_PIECE || own < most)) kept[leg] = 0;
  }
}
