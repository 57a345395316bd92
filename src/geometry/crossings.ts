import type { Point } from './point.js';
import { type Points, pointAt, pointCount } from './polyline.js';
import { indexSegments, type SegmentIndex } from './segment-index.js';
import { SAME_POINT } from './tolerances.js';

/** A point that two polylines share: a segment of each, and how far along that segment it is (0 to 1). */
export interface Crossing {
  readonly at: Point;
  readonly first: Place;
  readonly second: Place;
}

export interface Place {
  readonly line: number;
  readonly segment: number;
  readonly t: number;
}

/**
 * All points where polylines cross or touch each other or themselves; neighbors in a line do not count. A common vertex
 * is given once for each pair of segments that end in it. Where two segments lie on each other, the ends of the common
 * part are given. n log n plus what is found.
 */
export function crossings(lines: readonly Points[], index: SegmentIndex = indexSegments(lines)): Crossing[] {
  const found: Crossing[] = [];
  for (let k = 0; k < index.line.length; k++) {
    const line = index.line[k];
    const i = index.from[k];
    const p = pointAt(lines[line], i);
    const q = pointAt(lines[line], i + 1);
    for (const m of index.nearSegment(p, q, SAME_POINT, (m) => m > k)) {
      const other = index.line[m];
      const j = index.from[m];
      if (other === line && areNeighbors(lines[line], i, j)) continue;
      for (const [t, s] of meet(p, q, pointAt(lines[other], j), pointAt(lines[other], j + 1))) {
        found.push({
          at: [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])],
          first: { line, segment: i, t },
          second: { line: other, segment: j, t: s },
        });
      }
    }
  }
  return found;
}

function areNeighbors(line: Points, i: number, j: number): boolean {
  const n = pointCount(line) - 1;
  if (Math.abs(i - j) <= 1) return true;
  const closed = line[0] === line[2 * n] && line[1] === line[2 * n + 1];
  return closed && Math.abs(i - j) === n - 1;
}

/** Parameters on pq and on ab of the points that both have: none, one, or the two ends of a common part. */
function meet(p: Point, q: Point, a: Point, b: Point): [number, number][] {
  const same = (u: Point, v: Point) => u[0] === v[0] && u[1] === v[1];
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const ex = b[0] - a[0];
  const ey = b[1] - a[1];
  const fx = a[0] - p[0];
  const fy = a[1] - p[1];
  const cross = dx * ey - dy * ex;
  const d = Math.sqrt(dx * dx + dy * dy);
  const e = Math.sqrt(ex * ex + ey * ey);
  if (d === 0 || e === 0) return [];
  if (Math.abs(cross) <= 1e-10 * d * e) {
    if (Math.abs(dx * fy - dy * fx) / d > SAME_POINT) return [];
    const along = (x: number, y: number) => (x * dx + y * dy) / (d * d);
    const [s0, s1] = [along(fx, fy), along(fx + ex, fy + ey)];
    const low = Math.max(0, Math.min(s0, s1));
    const high = Math.min(1, Math.max(s0, s1));
    // end to end: one point, if at all
    if ((high - low) * d <= SAME_POINT) return high >= low ? [[low, clamp((low - s0) / (s1 - s0))]] : [];
    return [low, high].map((t) => [t, clamp((t - s0) / (s1 - s0))]);
  }
  if (same(p, a)) return [[0, 0]];
  if (same(p, b)) return [[0, 1]];
  if (same(q, a)) return [[1, 0]];
  if (same(q, b)) return [[1, 1]];
  const t = (fx * ey - fy * ex) / cross;
  const s = (fx * dy - fy * dx) / cross;
  const slackT = SAME_POINT / d;
  const slackS = SAME_POINT / e;
  if (t < -slackT || t > 1 + slackT || s < -slackS || s > 1 + slackS) return [];
  return [[clamp(t), clamp(s)]];
}

const clamp = (t: number) => Math.min(1, Math.max(0, t));
