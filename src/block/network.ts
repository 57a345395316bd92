import { signedArea } from '../geometry/area.js';
import { crossings } from '../geometry/crossings.js';
import { nearestOnSegment } from '../geometry/nearest.js';
import { distance, type Point } from '../geometry/point.js';
import {
  cumulativeLength,
  firstPoint,
  type Points,
  pointAt,
  pointCount,
  polylineLength,
} from '../geometry/polyline.js';
import { partOf } from '../geometry/polyline-part.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import { isRing, type LinePiece } from './pieces.js';
import { mean, type Snapped, withEnds } from './snap-ends.js';

/** Lines that meet only in common nodes. */
export interface Network {
  readonly nodes: readonly Point[];
  readonly edges: readonly Edge[];
}

export interface Edge {
  /** node indices; equal for a loop */
  readonly from: number;
  readonly to: number;
  readonly points: Points;
  /** index of the drawn line it belongs to */
  readonly line: number;
}

/** Moving nodes together can bring lines across each other; each round finds those. It settles in one or two. */
const MOST_ROUNDS = 5;

/**
 * Pieces with their ends joined, cut wherever they cross, touch or are butted into. Nodes that only a scrap no longer
 * than the tolerance keeps apart become one; of lines that still run side by side between the same nodes one is kept.
 */
export function networkOf(snapped: Snapped, snap: number): Network {
  let network = cutAtMeetings(snapped);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { joined, moved } = withoutScraps(network, snap);
    if (joined === network) break;
    network = moved ? cutAtMeetings(asSnapped(joined)) : joined;
  }
  return withoutTwins(network, snap);
}

const asSnapped = ({ nodes, edges }: Network): Snapped => ({
  pieces: edges.map(({ points, line }) => ({ points, line })),
  ends: edges.map(({ from, to }) => [from, to] as const),
  meetings: [...nodes],
  touches: [],
});

interface Cut {
  readonly u: number;
  readonly node: number;
}

function cutAtMeetings({ pieces, ends, meetings, touches }: Snapped): Network {
  const nodes: Point[] = [...meetings];
  const lines = pieces.map(({ points }) => points);
  const lengths = lines.map(cumulativeLength);
  const cuts = pieces.map((_, k) => new Cuts(lengths[k][lengths[k].length - 1], ends[k]));
  for (const { meeting, piece, u } of touches) cuts[piece].add(u, meeting);
  for (const { at, first, second } of crossings(lines)) {
    const places = [first, second].map(({ line, segment, t }) => {
      const length = lengths[line];
      return { line, u: length[segment] + t * (length[segment + 1] - length[segment]) };
    });
    // a crossing at a line's end, or where an end was put, is that node
    const known = places.map(({ line, u }) => cuts[line].nodeAt(u));
    const node = known[0] ?? known[1] ?? nodes.push(at) - 1;
    for (const { line, u } of places) cuts[line].add(u, node);
  }
  const edges = pieces.flatMap((piece, k) => cutPiece(piece, lengths[k], ends[k], cuts[k].inOrder(), nodes));
  return { nodes, edges };
}

/** Cuts of one piece; those nearer than SAME_POINT are one. */
class Cuts {
  private readonly byCell = new Map<number, Cut>();

  constructor(
    private readonly length: number,
    private readonly ends: readonly [number, number] | null,
  ) {}

  nodeAt(u: number): number | null {
    if (this.ends && u <= SAME_POINT) return this.ends[0];
    if (this.ends && u >= this.length - SAME_POINT) return this.ends[1];
    const cell = Math.round(u / SAME_POINT);
    for (const near of [cell, cell - 1, cell + 1]) {
      const cut = this.byCell.get(near);
      if (cut && Math.abs(cut.u - u) <= SAME_POINT) return cut.node;
    }
    return null;
  }

  add(u: number, node: number): void {
    if (this.nodeAt(u) === null) this.byCell.set(Math.round(u / SAME_POINT), { u, node });
  }

  /** in walking order */
  inOrder(): Cut[] {
    return [...this.byCell.values()].sort((a, b) => a.u - b.u || a.node - b.node);
  }
}

function cutPiece(
  { points, line }: LinePiece,
  at: Float64Array,
  ends: readonly [number, number] | null,
  inner: readonly Cut[],
  nodes: Point[],
): Edge[] {
  const length = at[at.length - 1];
  if (!ends && !inner.length) {
    nodes.push(firstPoint(points));
    return [{ from: nodes.length - 1, to: nodes.length - 1, points, line }];
  }
  const stops: readonly Cut[] = ends
    ? [{ u: 0, node: ends[0] }, ...inner, { u: length, node: ends[1] }]
    : inner;
  const edges: Edge[] = [];
  for (let i = 1; i < stops.length; i++) {
    const [a, b] = [stops[i - 1], stops[i]];
    if (a.node === b.node && b.u - a.u <= SAME_POINT) continue;
    const part = partOf(points, at, a.u, b.u);
    edges.push({ from: a.node, to: b.node, points: pinned(part, nodes[a.node], nodes[b.node]), line });
  }
  if (!ends) {
    const [last, first] = [stops[stops.length - 1], stops[0]];
    const tail = partOf(points, at, last.u, length);
    const head = partOf(points, at, 0, first.u);
    const around = last.u >= length - SAME_POINT ? head : first.u <= SAME_POINT ? tail : joinedAt(tail, head);
    edges.push({
      from: last.node,
      to: first.node,
      points: pinned(around, nodes[last.node], nodes[first.node]),
      line,
    });
  }
  return edges;
}

function joinedAt(a: Points, b: Points): Points {
  const all = new Float64Array(a.length + b.length - 2);
  all.set(a);
  all.set(b.subarray(2), a.length);
  return all;
}

/** A line whose ends are the very coordinates of its nodes. */
const pinned = (points: Points, start: Point, end: Point): Points => withEnds(points, start, end);

/**
 * Nodes at the two ends of a scrap become one, at the mean of those where most lines meet; dangling scraps go. Says
 * whether any node moved by more than rounding; without scraps the network is given back as it is.
 */
function withoutScraps(network: Network, snap: number): { joined: Network; moved: boolean } {
  const { nodes, edges } = network;
  const scraps = edges.map((edge) => isScrap(edge, nodes[edge.from], snap));
  if (!scraps.some(Boolean)) return { joined: network, moved: false };
  const degree = new Int32Array(nodes.length);
  for (const { from, to } of edges) {
    degree[from]++;
    degree[to]++;
  }
  const parent = nodes.map((_, i) => i);
  const root = (i: number): number => {
    while (parent[i] !== i) {
      parent[i] = parent[parent[i]];
      i = parent[i];
    }
    return i;
  };
  edges.forEach(({ from, to }, e) => {
    if (scraps[e]) parent[root(from)] = root(to);
  });
  const members = new Map<number, number[]>();
  for (let i = 0; i < nodes.length; i++) {
    const r = root(i);
    members.set(r, [...(members.get(r) ?? []), i]);
  }
  const at: Point[] = [...nodes];
  let moved = false;
  for (const [r, group] of members) {
    if (group.length === 1) continue;
    const most = Math.max(...group.map((i) => degree[i]));
    at[r] = mean(group.filter((i) => degree[i] === most).map((i) => nodes[i]));
    if (group.some((i) => distance(nodes[i], at[r]) > SAME_POINT)) moved = true;
  }
  const kept = edges
    .filter((_, e) => !scraps[e])
    .map((edge) => {
      const [from, to] = [root(edge.from), root(edge.to)];
      return { ...edge, from, to, points: withEnds(edge.points, at[from], at[to]) };
    });
  return { joined: { nodes: at, edges: kept }, moved };
}

/** No longer than the tolerance, or a loop that stays within it or encloses nothing. */
function isScrap({ from, to, points }: Edge, node: Point, snap: number): boolean {
  if (polylineLength(points) <= snap) return true;
  if (from !== to) return false;
  if (Math.abs(signedArea(points)) <= SAME_POINT * SAME_POINT) return true;
  for (let i = 0; i < pointCount(points); i++) if (distance(pointAt(points, i), node) > snap) return false;
  return true;
}

/** Of edges between the same two nodes that lie within the tolerance all along, only the longest. */
function withoutTwins({ nodes, edges }: Network, snap: number): Network {
  const byEnds = new Map<string, number[]>();
  edges.forEach(({ from, to }, e) => {
    const key = from < to ? `${from} ${to}` : `${to} ${from}`;
    byEnds.set(key, [...(byEnds.get(key) ?? []), e]);
  });
  const dropped = new Set<number>();
  for (const group of byEnds.values()) {
    if (group.length < 2) continue;
    const longest = [...group].sort(
      (a, b) => polylineLength(edges[b].points) - polylineLength(edges[a].points),
    );
    longest.forEach((e, i) => {
      const twin = longest
        .slice(0, i)
        .some((f) => !dropped.has(f) && runsAlong(edges[e].points, edges[f].points, snap));
      if (twin) dropped.add(e);
    });
  }
  return { nodes, edges: edges.filter((_, e) => !dropped.has(e)) };
}

function runsAlong(line: Points, other: Points, reach: number): boolean {
  if (isRing(line)) return false;
  for (let i = 0; i + 1 < pointCount(line); i++) {
    const [a, b] = [pointAt(line, i), pointAt(line, i + 1)];
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    if (i > 0 && !near(a, other, reach)) return false;
    if (!near(middle, other, reach)) return false;
  }
  return true;
}

function near(p: Point, line: Points, reach: number): boolean {
  for (let i = 0; i + 1 < pointCount(line); i++) {
    if (nearestOnSegment(p, pointAt(line, i), pointAt(line, i + 1)).distance <= reach) return true;
  }
  return false;
}
