import Flatbush from 'flatbush';
import { groupsOf } from '../geometry/groups.js';
import { nearestOnSegment } from '../geometry/nearest.js';
import type { Point } from '../geometry/point.js';
import { between, distance } from '../geometry/point.js';
import {
  cumulativeLength,
  firstPoint,
  lastPoint,
  type Points,
  pointAt,
  pointCount,
} from '../geometry/polyline.js';
import { indexSegments } from '../geometry/segment-index.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import { isRing, type LinePiece } from './pieces.js';

/** A moved end draws the line after it over this many times its move: it leans, and gets no kink. */
const LEAN = 10;

/** Both ends of an open line to new places; points further away than the lean stay where they are. */
export function withEnds(points: Points, start: Point, end: Point): Points {
  const moves = [distance(firstPoint(points), start), distance(lastPoint(points), end)];
  if (moves[0] === 0 && moves[1] === 0) return points;
  const at = cumulativeLength(points);
  const n = pointCount(points);
  const length = at[n - 1];
  const reach = moves.map((move) => Math.min(LEAN * move, length / 2));
  const shift = [
    [start[0] - points[0], start[1] - points[1]],
    [end[0] - points[2 * n - 2], end[1] - points[2 * n - 1]],
  ];
  const moved = Float64Array.from(points);
  for (let i = 1; i + 1 < n; i++) {
    const shares = [reach[0] - at[i], reach[1] - (length - at[i])];
    for (const side of [0, 1]) {
      if (shares[side] <= 0) continue;
      moved[2 * i] += (shift[side][0] * shares[side]) / reach[side];
      moved[2 * i + 1] += (shift[side][1] * shares[side]) / reach[side];
    }
  }
  moved.set(start, 0);
  moved.set(end, 2 * n - 2);
  return moved;
}

/** Where an end lies on a line that goes on: the meeting point's number, and the place on the piece. */
export interface Touch {
  readonly meeting: number;
  readonly piece: number;
  readonly u: number;
}

export interface Snapped {
  readonly pieces: LinePiece[];
  /** for each piece the meeting points at its two ends; null on a ring */
  readonly ends: (readonly [number, number] | null)[];
  readonly meetings: Point[];
  readonly touches: Touch[];
}

/**
 * Draws ends together: ends within the tolerance of each other meet at their mean, whatever the order; then each such
 * meeting point within the tolerance of another line moves onto it.
 */
export function snapEnds(pieces: readonly LinePiece[], snap: number): Snapped {
  const ends: Point[] = [];
  const endOf = pieces.map(({ points }): readonly [number, number] | null => {
    if (isRing(points)) return null;
    ends.push(firstPoint(points), lastPoint(points));
    return [ends.length - 2, ends.length - 1];
  });
  const { group, meetings } = meetInGroups(ends, snap);
  const pieceEnds = endOf.map(
    (pair): readonly [number, number] | null => pair && [group[pair[0]], group[pair[1]]],
  );
  const place = (at: readonly Point[]) =>
    pieces.map((piece, k) => {
      const pair = pieceEnds[k];
      return pair ? { ...piece, points: withEnds(piece.points, at[pair[0]], at[pair[1]]) } : piece;
    });

  // A line may lean a little when its own ends move onto others, so the feet on it are looked for again.
  let at = meetings;
  let moved = place(at);
  let touches = feet(moved, pieceEnds, at, snap);
  for (let round = 0; round < 4 && touches.length; round++) {
    const next = [...at];
    for (const { meeting, foot } of touches) next[meeting] = foot;
    const settled = touches.every(({ meeting, foot }) => distance(at[meeting], foot) <= SAME_POINT / 10);
    at = next;
    moved = place(at);
    if (settled) break;
    touches = feet(moved, pieceEnds, at, snap);
  }
  return { pieces: moved, ends: pieceEnds, meetings: [...at], touches };
}

/** Groups of points within reach of each other, in chains; each group's mean; means within reach are grouped again. */
export function meetInGroups(
  points: readonly Point[],
  reach: number,
): { group: number[]; meetings: Point[] } {
  let group = points.map((_, i) => i);
  let meetings: Point[] = [...points];
  for (let count = -1; count !== meetings.length; ) {
    count = meetings.length;
    const joinedTo = chains(meetings, reach);
    const numbers = new Map<number, number>();
    for (const root of joinedTo) if (!numbers.has(root)) numbers.set(root, numbers.size);
    group = group.map((g) => numbers.get(joinedTo[g])!);
    const members: Point[][] = Array.from({ length: numbers.size }, () => []);
    group.forEach((g, i) => void members[g].push(points[i]));
    meetings = members.map(mean);
  }
  return { group, meetings };
}

/** The mean of points, the same to the last bit in any order; of points that coincide, one of them. */
export function mean(points: readonly Point[]): Point {
  const sorted = [...points].sort((a, b) => a[1] - b[1] || a[0] - b[0]);
  if (sorted.every((p) => distance(p, sorted[0]) <= SAME_POINT)) return sorted[0];
  const sum = sorted.reduce(([x, y], p) => [x + p[0], y + p[1]], [0, 0] as Point);
  return [sum[0] / points.length, sum[1] / points.length];
}

/** For each point the first one of the chain that it belongs to (union of all pairs within reach). */
function chains(points: readonly Point[], reach: number): number[] {
  if (points.length < 2) return points.map((_, i) => i);
  const groups = groupsOf(points.length);
  const index = new Flatbush(points.length);
  for (const [x, y] of points) index.add(x, y, x, y);
  index.finish();
  const limit = reach + SAME_POINT / 1000;
  points.forEach((p, i) => {
    for (const j of index.search(p[0] - limit, p[1] - limit, p[0] + limit, p[1] + limit)) {
      if (j <= i || distance(p, points[j]) > limit) continue;
      groups.join(i, j);
    }
  });
  return points.map((_, i) => groups.of(i));
}

/** For each meeting point the nearest place on a line that goes on there, if one is within the tolerance. */
function feet(
  pieces: readonly LinePiece[],
  ends: readonly (readonly [number, number] | null)[],
  meetings: readonly Point[],
  snap: number,
): (Touch & { readonly foot: Point })[] {
  const lines = pieces.map(({ points }) => points);
  const lengths = lines.map(cumulativeLength);
  const index = indexSegments(lines);
  // a line's own end is not near it; where it comes back to that end later, it is
  const own = 4 * snap;
  const found: (Touch & { readonly foot: Point })[] = [];
  meetings.forEach((p, meeting) => {
    let best: (Touch & { foot: Point }) | null = null;
    let least = snap + SAME_POINT / 1000;
    for (const m of index.near(p[0] - least, p[1] - least, p[0] + least, p[1] + least)) {
      const piece = index.line[m];
      const i = index.from[m];
      const [a, b] = [pointAt(lines[piece], i), pointAt(lines[piece], i + 1)];
      const { t, distance: off } = nearestOnSegment(p, a, b);
      if (off > least || (off === least && best)) continue;
      const at = lengths[piece];
      const u = at[i] + t * (at[i + 1] - at[i]);
      const length = at[at.length - 1];
      const pair = ends[piece];
      if (pair) {
        if (u <= SAME_POINT || u >= length - SAME_POINT) continue;
        if (pair[0] === meeting && u < own) continue;
        if (pair[1] === meeting && u > length - own) continue;
      }
      least = off;
      best = { meeting, piece, u, foot: between(a, b, t) };
    }
    if (best) found.push(best);
  });
  return found;
}
