import type { Point } from './point.js';

/** The nearest place on the segment from a to b: t from 0 at a to 1 at b, and how far off it is. */
export function nearestOnSegment(
  p: Point,
  a: Point,
  b: Point,
): { readonly t: number; readonly distance: number } {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square : 0;
  const t = Math.min(1, Math.max(0, along));
  const x = a[0] + t * dx - p[0];
  const y = a[1] + t * dy - p[1];
  return { t, distance: Math.sqrt(x * x + y * y) };
}

/**
 * Which part of the segment from p to q lies within a distance of the segment from a to b: [from, to] as shares of pq,
 * or null. What is near a segment is convex (a strip with round ends), so the part is one interval.
 */
export function nearPart(p: Point, q: Point, a: Point, b: Point, reach: number): [number, number] | null {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const ex = b[0] - a[0];
  const ey = b[1] - a[1];
  const size = Math.sqrt(ex * ex + ey * ey);
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  const take = (low: number, high: number) => {
    const start = Math.max(0, low);
    const end = Math.min(1, high);
    if (start > end) return;
    from = Math.min(from, start);
    to = Math.max(to, end);
  };
  for (const c of [a, b]) {
    const fx = p[0] - c[0];
    const fy = p[1] - c[1];
    const A = dx * dx + dy * dy;
    const B = fx * dx + fy * dy;
    const C = fx * fx + fy * fy - reach * reach;
    if (A === 0) {
      if (C <= 0) take(0, 1);
      continue;
    }
    const root = B * B - A * C;
    if (root >= 0) take((-B - Math.sqrt(root)) / A, (-B + Math.sqrt(root)) / A);
  }
  if (size > 0) {
    // the strip: along the segment between its ends, across it at most `reach`
    const along = within(
      ((p[0] - a[0]) * ex + (p[1] - a[1]) * ey) / size,
      (dx * ex + dy * ey) / size,
      0,
      size,
    );
    const across = within(
      ((p[1] - a[1]) * ex - (p[0] - a[0]) * ey) / size,
      (dy * ex - dx * ey) / size,
      -reach,
      reach,
    );
    if (along && across) take(Math.max(along[0], across[0]), Math.min(along[1], across[1]));
  }
  return from <= to ? [from, to] : null;
}

/** Where start + t * slope lies from low to high. */
function within(start: number, slope: number, low: number, high: number): [number, number] | null {
  if (slope === 0) {
    return start >= low && start <= high ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] : null;
  }
  const t = (low - start) / slope;
  const s = (high - start) / slope;
  return t < s ? [t, s] : [s, t];
}
