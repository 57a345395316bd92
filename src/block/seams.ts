import { findCorners } from '../geometry/corners.js';
import { cumulativeLength, polylineLength } from '../geometry/polyline.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import type { Meeting } from './chains.js';
import type { Network } from './network.js';
import { OUTSIDE, type Regions } from './regions.js';
import type { Seam, SeamCrossing, SeamEnd, SeamSide } from './seam-map.js';
import type { OrderedChain } from './seam-order.js';

/** The node that a half-edge leaves. */
export const tail = ({ edges }: Network, h: number): number =>
  h & 1 ? edges[h >> 1].to : edges[h >> 1].from;

/** Arc length along a chain's own line at the tail of each of its half-edges, and its whole length. */
export function stations(
  network: Network,
  { halfEdges, closed, start }: { halfEdges: readonly number[]; closed: boolean; start: number },
): { readonly u: readonly number[]; readonly length: number } {
  const raw: number[] = [];
  let length = 0;
  for (const h of halfEdges) {
    raw.push(length);
    length += polylineLength(network.edges[h >> 1].points);
  }
  const u = raw.map((at) => {
    if (!closed) return at;
    const shifted = (at - start + length) % length;
    return length - shifted <= SAME_POINT ? 0 : shifted;
  });
  return { u, length };
}

/** One seam of the map. `numberAt` gives the junction of a node, -1 where there is none. */
export function seamOf(
  id: number,
  chain: OrderedChain,
  network: Network,
  meetings: readonly Meeting[],
  numberAt: Int32Array,
  { right }: Regions,
  idOfFace: readonly number[],
): Seam {
  const { halfEdges, closed, points } = chain;
  const length = cumulativeLength(points).at(-1)!;
  const { u } = stations(network, chain);
  const patch = (h: number) => (right[h] === OUTSIDE ? null : idOfFace[right[h]]);
  const crossings: SeamCrossing[] = [];
  const sides: SeamSide[] = [];
  halfEdges.forEach((h, i) => {
    const junction = numberAt[tail(network, h)];
    if (junction >= 0 && (closed || i > 0)) crossings.push({ u: u[i], junction });
    const next = (i + 1) % halfEdges.length;
    const to = next === 0 && !closed ? length : u[next];
    const side = { left: patch(h ^ 1), right: patch(h) };
    if (u[i] < to - SAME_POINT) sides.push({ from: u[i], to, ...side });
    else {
      // the stretch of a ring that goes past its start
      sides.push({ from: u[i], to: length, ...side });
      if (to > SAME_POINT) sides.push({ from: 0, to, ...side });
    }
  });
  const endAt = (node: number): SeamEnd => {
    const { leaving, onOutline } = meetings[node];
    if (leaving.length === 1) return { kind: 'free', junction: -1 };
    return { kind: onOutline ? 'outline' : 'junction', junction: numberAt[node] };
  };
  const lastHalfEdge = halfEdges[halfEdges.length - 1];
  return {
    id,
    closed,
    points,
    corners: findCorners(points, closed),
    ends: closed ? null : [endAt(tail(network, halfEdges[0])), endAt(tail(network, lastHalfEdge ^ 1))],
    crossings: crossings.sort((a, b) => a.u - b.u),
    sides: joinedSides(sides),
  };
}

function joinedSides(sides: readonly SeamSide[]): SeamSide[] {
  const joined: SeamSide[] = [];
  for (const side of [...sides].sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last && last.left === side.left && last.right === side.right) {
      joined[joined.length - 1] = { ...last, to: side.to };
    } else joined.push(side);
  }
  return joined;
}
