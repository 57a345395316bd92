import simplify from 'simplify-js';
import type { Corner } from './guide-line.js';
import { wrapAngle } from './point.js';
import { cumulativeLength, type Points, pointCount } from './polyline.js';
import { FAIRING, SAME_POINT } from './tolerances.js';

/** A line whose vertices turn more than this between corners was drawn point by point, not flattened from a curve. */
const DRAWN_TURN = (3 * Math.PI) / 180;

/** The vertices of a line that easing starts from. */
export interface Vertices {
  readonly points: Points;
  /** arc length at each vertex */
  readonly at: Float64Array;
  readonly isCorner: Uint8Array;
  /** how far easing may move each vertex, mm */
  readonly budget: Float64Array;
}

/**
 * Vertices of a polyline, corners marked. Stretches that were drawn point by point are thinned first, within half of
 * FAIRING, so that many small turns become few that can be eased by wide arcs; the other half is left for the easing.
 * Elsewhere vertices on a straight, as where another line meets it, are left out: on a flattened curve one of them may lie
 * so near to the next that this one could only be eased by a tight bend.
 */
export function verticesOf(points: Points, corners: readonly Corner[], closed: boolean): Vertices {
  const clean = withoutRepeats(points);
  const n = pointCount(clean);
  const marks = cornerVertices(cumulativeLength(clean), corners, closed);
  const kept: number[] = [];
  const isCorner: number[] = [];
  const budget: number[] = [];
  let from = 0;
  for (let to = 1; to < n; to++) {
    if (!marks[to] && to < n - 1) continue;
    const stretch = clean.subarray(2 * from, 2 * to + 2);
    const isDrawn = wasDrawn(stretch);
    const line = isDrawn ? thinned(stretch, FAIRING / 2) : withoutStraight(stretch);
    for (let i = from === 0 ? 0 : 1; i < line.length / 2; i++) {
      kept.push(line[2 * i], line[2 * i + 1]);
      budget.push(isDrawn ? FAIRING / 2 : FAIRING);
      isCorner.push(i === 0 ? marks[from] : i === line.length / 2 - 1 ? marks[to] : 0);
    }
    from = to;
  }
  const vertices = Float64Array.from(kept);
  return {
    points: vertices,
    at: cumulativeLength(vertices),
    isCorner: Uint8Array.from(isCorner),
    budget: Float64Array.from(budget),
  };
}

function wasDrawn(line: Points): boolean {
  const heading = (i: number) => Math.atan2(line[2 * i + 3] - line[2 * i + 1], line[2 * i + 2] - line[2 * i]);
  for (let i = 1; i + 1 < pointCount(line); i++) {
    if (Math.abs(wrapAngle(heading(i) - heading(i - 1))) > DRAWN_TURN) return true;
  }
  return false;
}

/** Douglas and Peucker's thinning (The Canadian Cartographer 10, 1973), through simplify-js. */
function thinned(line: Points, tolerance: number): Points {
  const points = Array.from({ length: pointCount(line) }, (_, i) => ({ x: line[2 * i], y: line[2 * i + 1] }));
  return Float64Array.from(simplify(points, tolerance, true).flatMap(({ x, y }) => [x, y]));
}

/** Without the inner vertices that lie on the straight line between the one kept before and the next. */
function withoutStraight(line: Points): Points {
  const n = pointCount(line);
  const kept: number[] = [line[0], line[1]];
  for (let i = 1; i < n; i++) {
    const [x, y] = [line[2 * i], line[2 * i + 1]];
    if (i + 1 < n) {
      const [dx, dy] = [line[2 * i + 2] - kept[kept.length - 2], line[2 * i + 3] - kept[kept.length - 1]];
      const [ax, ay] = [x - kept[kept.length - 2], y - kept[kept.length - 1]];
      const isOnward = ax * dx + ay * dy > 0;
      if (isOnward && Math.abs(ax * dy - ay * dx) <= SAME_POINT * Math.hypot(dx, dy)) continue;
    }
    kept.push(x, y);
  }
  return Float64Array.from(kept);
}

function withoutRepeats(points: Points): Points {
  const kept: number[] = [points[0], points[1]];
  for (let i = 1; i < pointCount(points); i++) {
    const k = kept.length;
    if (Math.hypot(points[2 * i] - kept[k - 2], points[2 * i + 1] - kept[k - 1]) > SAME_POINT) {
      kept.push(points[2 * i], points[2 * i + 1]);
    }
  }
  return Float64Array.from(kept);
}

/** Marks the vertices that corners name; a corner at the start of a closed line marks both its ends. */
function cornerVertices(at: Float64Array, corners: readonly Corner[], closed: boolean): Uint8Array {
  const marks = new Uint8Array(at.length);
  for (const { u } of corners) {
    let low = 0;
    let high = at.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (at[middle] < u) low = middle + 1;
      else high = middle;
    }
    const nearest = low > 0 && u - at[low - 1] < at[low] - u ? low - 1 : low;
    marks[nearest] = 1;
  }
  if (closed && (marks[0] || marks[at.length - 1])) {
    marks[0] = 1;
    marks[at.length - 1] = 1;
  }
  return marks;
}
