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
/** Figures that lose their shape when cut: they are left out whole. */
const WHOLE: ReadonlySet<LegKind> = new Set<LegKind>(['loop', 'knot', 'petal', 'cord']);

/**
 * A chain cut to the cloth it may lie on: straights and curves end at the line, figures that cross it are left out,
 * and what then hangs loose as a mere stub goes too.
 */
export function cutChain(chain: Chain, cuts: readonly Cut[]): Chain {
  const allowed = (x: number, y: number) => cuts.every((cut) => onCloth(cut, x, y));
  const nodeIn = Array.from({ length: chain.nodes.length / 2 }, (_, i) =>
    allowed(chain.nodes[2 * i], chain.nodes[2 * i + 1]),
  );
  if (nodeIn.every(Boolean)) return chain;
  const nodes = Array.from(chain.nodes);
  const legs: CutLeg[] = [];
  for (let i = 0; i < chain.from.length; i++) {
    const path = chain.path.subarray(2 * chain.pathStart[i], 2 * chain.pathStart[i + 1]);
    const fromIn = nodeIn[chain.from[i]];
    const toIn = nodeIn[chain.to[i]];
    if (fromIn && toIn) {
      legs.push({ leg: i, from: chain.from[i], to: chain.to[i], path });
      continue;
    }
    if (fromIn === toIn || WHOLE.has(chain.kind[i]) || chain.kind[i] === 'under') continue;
    const kept = keptPart(path, fromIn, allowed);
    if (lengthOf(kept) < SHORTEST_STUB) continue;
    const node = nodes.length / 2;
    const end = fromIn ? kept.length - 2 : 0;
    nodes.push(kept[end], kept[end + 1]);
    legs.push({
      leg: i,
      from: fromIn ? chain.from[i] : node,
      to: fromIn ? node : chain.to[i],
      path: kept,
    });
  }
  return withLegs(chain, Float64Array.from(nodes), legs);
}

/** A chain without some of its legs, and without the stubs that then hang loose. */
export function withoutLegs(chain: Chain, dropped: (leg: number) => boolean): Chain {
  const legs: CutLeg[] = [];
  for (let i = 0; i < chain.from.length; i++) {
    if (dropped(i)) continue;
    const path = chain.path.subarray(2 * chain.pathStart[i], 2 * chain.pathStart[i + 1]);
    legs.push({ leg: i, from: chain.from[i], to: chain.to[i], path });
  }
  return legs.length === chain.from.length ? chain : withLegs(chain, chain.nodes, legs);
}

export function onCloth(cut: Cut, x: number, y: number): boolean {
  const inside = ({ at, normal }: HalfPlane) => (x - at[0]) * normal[0] + (y - at[1]) * normal[1] >= -1e-9;
  return cut.all ? cut.planes.every(inside) : cut.planes.some(inside);
}

interface CutLeg {
  readonly leg: number;
  readonly from: number;
  readonly to: number;
  readonly path: Float64Array | readonly number[];
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

function lengthOf(path: Float64Array | readonly number[]): number {
  let length = 0;
  for (let k = 2; k < path.length; k += 2) {
    length += Math.hypot(path[k] - path[k - 2], path[k + 1] - path[k - 1]);
  }
  return length;
}

function withLegs(chain: Chain, nodes: Float64Array, all: readonly CutLeg[]): Chain {
  const legs = withoutStubs(chain, nodes.length / 2, all);
  const used = new Int32Array(nodes.length / 2).fill(-1);
  const kept: number[] = [];
  const renumber = (node: number) => {
    if (used[node] < 0) {
      used[node] = kept.length / 2;
      kept.push(nodes[2 * node], nodes[2 * node + 1]);
    }
    return used[node];
  };
  const from = Int32Array.from(legs, (leg) => renumber(leg.from));
  const to = Int32Array.from(legs, (leg) => renumber(leg.to));
  const pathStart = new Int32Array(legs.length + 1);
  legs.forEach((leg, i) => {
    pathStart[i + 1] = pathStart[i] + leg.path.length / 2;
  });
  const path = new Float64Array(2 * pathStart[legs.length]);
  legs.forEach((leg, i) => {
    path.set(leg.path, 2 * pathStart[i]);
  });
  return {
    units: chain.units,
    closed: chain.closed,
    nodes: Float64Array.from(kept),
    from,
    to,
    legClass: Uint16Array.from(legs, (leg) => chain.legClass[leg.leg]),
    unit: Int32Array.from(legs, (leg) => chain.unit[leg.leg]),
    passes: Uint8Array.from(legs, (leg) => chain.passes[leg.leg]),
    kind: legs.map((leg) => chain.kind[leg.leg]),
    size: Float32Array.from(legs, (leg) => chain.size[leg.leg]),
    pathStart,
    path,
  };
}

/** Drops connected pieces that show less thread than SHORTEST_PIECE, and under-legs that lead nowhere. */
function withoutStubs(chain: Chain, nodeCount: number, legs: readonly CutLeg[]): CutLeg[] {
  const visible = (leg: CutLeg) => chain.kind[leg.leg] !== 'under';
  let kept = [...legs];
  for (let changed = true; changed; ) {
    const degree = new Int32Array(nodeCount);
    for (const leg of kept) {
      degree[leg.from]++;
      degree[leg.to]++;
    }
    const next = kept.filter((leg) => visible(leg) || (degree[leg.from] > 1 && degree[leg.to] > 1));
    changed = next.length < kept.length;
    kept = next;
  }
  const parent = Int32Array.from({ length: nodeCount }, (_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (parent[r] !== r) r = parent[r];
    while (parent[i] !== r) [parent[i], i] = [r, parent[i]];
    return r;
  };
  for (const leg of kept) parent[root(leg.from)] = root(leg.to);
  const shown = new Float64Array(nodeCount);
  for (const leg of kept) {
    const figure = chain.kind[leg.leg] === 'knot' ? SHORTEST_PIECE : 0;
    if (visible(leg)) shown[root(leg.from)] += lengthOf(leg.path) + figure;
  }
  return kept.filter((leg) => shown[root(leg.from)] >= SHORTEST_PIECE);
}
