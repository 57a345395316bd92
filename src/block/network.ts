import { crossings } from '../geometry/crossings.js';
import type { Point } from '../geometry/point.js';
import { cumulativeLength, firstPoint, type Points } from '../geometry/polyline.js';
import { partOf } from '../geometry/polyline-part.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import type { LinePiece } from './pieces.js';
import { withoutScraps } from './scraps.js';
import { type Snapped, withEnds } from './snap-ends.js';
import { withoutTwins } from './twins.js';

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
