import { nearestOnSegment, nearPart } from '../geometry/nearest.js';
import type { Point } from '../geometry/point.js';
import { cumulativeLength, type Points, pointAt, pointCount } from '../geometry/polyline.js';
import { partOf, pointAtLength, segmentAt } from '../geometry/polyline-part.js';
import { indexSegments, type SegmentIndex } from '../geometry/segment-index.js';
import { DOUBLED_RUN, SAME_POINT } from '../geometry/tolerances.js';
import type { LinePiece } from './pieces.js';

/** Where a line leaves another one steeper than this (mm per mm) it counts as gone: about one degree. */
const LEAVING_SLOPE = 0.02;
/** Step in which the place of leaving is looked for, mm. */
const LEAVING_STEP = 0.05;

type Interval = [from: number, to: number];

/**
 * Pieces without the stretches that run along an earlier, longer piece within the tolerance for more than DOUBLED_RUN:
 * two such lines are one. What is left of a line is cut where it comes up to the other one; its new ends are joined
 * to it when ends are snapped. Cost n log n in the segments, plus the pairs that lie near each other.
 *
 * @param pieces in an order that does not depend on drawing, see `longestFirst`
 * @returns what is left, and which drawn lines lost something to another
 */
export function withoutDoubled(
  pieces: readonly LinePiece[],
  snap: number,
): { readonly pieces: LinePiece[]; readonly merged: ReadonlySet<number> } {
  const lines = pieces.map(({ points }) => points);
  const lengths = lines.map(cumulativeLength);
  const kept: Interval[][] = [];
  const search: Search = { lines, lengths, index: indexSegments(lines), kept, snap };
  const merged = new Set<number>();
  const left: LinePiece[] = [];
  pieces.forEach((piece, k) => {
    const at = lengths[k];
    const whole = at[at.length - 1];
    const doubled = doubledRuns(k, search);
    const rest = complement(doubled, whole, snap);
    kept.push(rest);
    if (doubled.length) merged.add(piece.line);
    if (rest.length === 1 && rest[0][0] === 0 && rest[0][1] === whole) left.push(piece);
    else for (const [from, to] of rest) left.push({ ...piece, points: partOf(piece.points, at, from, to) });
  });
  return { pieces: left, merged };
}

/** All lines, and what is kept so far of those that have been looked at. */
interface Search {
  readonly lines: readonly Points[];
  /** length along each line at its points, mm */
  readonly lengths: readonly Float64Array[];
  readonly index: SegmentIndex;
  readonly kept: readonly (readonly Interval[])[];
  readonly snap: number;
}

/** Stretches of line k along which some earlier line stands in for it, cut back to where it leaves that line. */
function doubledRuns(k: number, search: Search): Interval[] {
  const { lines, lengths, index } = search;
  const whole = lengths[k][lengths[k].length - 1];
  const near = stretchesNear(k, search);
  const runs: Interval[] = [];
  for (const stretches of near.values()) {
    for (const { from, to, members } of joined(stretches)) {
      const off = (u: number) => offset(u, pointAtLength(lines[k], lengths[k], u), members, lines, index);
      const wholly = from <= SAME_POINT && to >= whole - SAME_POINT;
      if (!wholly && to - from <= DOUBLED_RUN) continue;
      const vertices = lengths[k].subarray(segmentAt(lengths[k], from) + 1, segmentAt(lengths[k], to) + 1);
      const start = from <= SAME_POINT ? 0 : leaving(from, to, vertices, off);
      const end = to >= whole - SAME_POINT ? whole : leaving(to, from, vertices, off);
      // lines that cross or butt at a slant, or touch as a circle does, come up to each other in a point or little more
      if (wholly || end - start > DOUBLED_RUN) runs.push([start, end]);
    }
  }
  return runs;
}

/** Where a line lies within the tolerance of one segment. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly segment: number;
}

/** Where line k lies within the tolerance of what is kept of each earlier line, segment by segment. */
function stretchesNear(k: number, { lines, lengths, index, kept, snap }: Search): Map<number, Stretch[]> {
  const found = new Map<number, Stretch[]>();
  const at = lengths[k];
  // of many lines that double each other only the first is kept, so few are near
  const standsIn = (m: number) => index.line[m] < k && kept[index.line[m]].length > 0;
  for (let i = 0; i + 1 < pointCount(lines[k]); i++) {
    const p = pointAt(lines[k], i);
    const q = pointAt(lines[k], i + 1);
    for (const m of index.nearSegment(p, q, snap, standsIn)) {
      const other = index.line[m];
      const j = index.from[m];
      for (const [a, b] of keptOf(lines[other], lengths[other], j, kept[other])) {
        const part = nearPart(p, q, a, b, snap);
        if (!part) continue;
        const span = at[i + 1] - at[i];
        const list = found.get(other) ?? [];
        if (!list.length) found.set(other, list);
        list.push({ from: at[i] + part[0] * span, to: at[i] + part[1] * span, segment: m });
      }
    }
  }
  return found;
}

/** The parts of segment j that are still in the network. */
function keptOf(line: Points, at: Float64Array, j: number, kept: readonly Interval[]): [Point, Point][] {
  const parts: [Point, Point][] = [];
  for (const [from, to] of kept) {
    const low = Math.max(from, at[j]);
    const high = Math.min(to, at[j + 1]);
    if (low >= high) continue;
    const whole = low === at[j] && high === at[j + 1];
    parts.push(
      whole
        ? [pointAt(line, j), pointAt(line, j + 1)]
        : [pointAtLength(line, at, low), pointAtLength(line, at, high)],
    );
  }
  return parts;
}

/** Stretches that touch, joined to the longest ones. */
function joined(stretches: readonly Stretch[]): { from: number; to: number; members: Stretch[] }[] {
  const runs: { from: number; to: number; members: Stretch[] }[] = [];
  for (const stretch of [...stretches].sort((a, b) => a.from - b.from)) {
    const last = runs.at(-1);
    if (last && stretch.from <= last.to + SAME_POINT) {
      last.to = Math.max(last.to, stretch.to);
      last.members.push(stretch);
    } else runs.push({ from: stretch.from, to: stretch.to, members: [stretch] });
  }
  return runs;
}

/** How far the point at u lies from the nearest of the segments near it. */
function offset(
  u: number,
  p: Point,
  members: readonly Stretch[],
  lines: readonly Points[],
  index: SegmentIndex,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { from, to, segment } of members) {
    if (u < from - SAME_POINT || u > to + SAME_POINT) continue;
    const line = lines[index.line[segment]];
    const i = index.from[segment];
    least = Math.min(least, nearestOnSegment(p, pointAt(line, i), pointAt(line, i + 1)).distance);
  }
  return least;
}

/**
 * From the edge of the tolerance inward, the place where the line has come up to the other: where the distance no
 * longer falls faster than LEAVING_SLOPE. Vertices are tried themselves, so an exact drawing is cut exactly.
 */
function leaving(edge: number, far: number, vertices: Float64Array, distance: (u: number) => number): number {
  const way = far > edge ? 1 : -1;
  const span = Math.abs(far - edge);
  let u = edge;
  let d = distance(u);
  for (let come = 0; come < span; ) {
    const step = nextStop(u, way, span - come, vertices);
    const next = distance(u + way * step);
    if (d - next < LEAVING_SLOPE * step) break;
    u += way * step;
    come += step;
    d = next;
  }
  // the least distance may lie inside the step that no longer paid
  let [low, high] = [u, u + way * Math.min(LEAVING_STEP, Math.abs(far - u))];
  const vertex = vertices.find((v) => Math.abs(v - u) <= SAME_POINT);
  if (vertex !== undefined) return vertex;
  for (let i = 0; i < 30; i++) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (distance(a) - distance(b) > LEAVING_SLOPE * Math.abs(b - a)) low = a;
    else high = b;
  }
  return low;
}

function nextStop(u: number, way: number, left: number, vertices: Float64Array): number {
  let step = Math.min(LEAVING_STEP, left);
  for (const v of vertices) {
    const ahead = way * (v - u);
    if (ahead > SAME_POINT && ahead < step) step = ahead;
  }
  return step;
}

/** What a line keeps: all but the runs. Scraps no longer than the tolerance between two runs go with them. */
function complement(runs: readonly Interval[], whole: number, snap: number): Interval[] {
  const rest: Interval[] = [];
  let come = 0;
  for (const [from, to] of [...runs].sort((a, b) => a[0] - b[0])) {
    if (from - come > (come === 0 ? SAME_POINT : snap)) rest.push([come, from]);
    come = Math.max(come, to);
  }
  if (whole - come > (come === 0 ? 0 : SAME_POINT)) rest.push([come, whole]);
  return rest;
}
