import { type Point, wrapAngle } from '../geometry/point.js';
import { away, type Round, type Side, type Straight } from './sewn-side.js';

/** Needle points stray at most this far from the side they belong to: rounding to steps takes up 0.07. */
export const STRAY = 0.1;
/** Three points always lie on a circle; a fourth makes it worth the name. */
export const LEAST_ON_ARC = 4;
/** An arc that bulges less than this is a line. */
const LEAST_BULGE = 2 * STRAY;
/** Angles along an arc are told apart by its middle, so an arc is clearly less than a full circle. */
const LONGEST_ARC = 1.75 * Math.PI;

/** Total least squares through at least two points, walked from the first to the last. */
export function fitLine(points: readonly Point[]): Straight {
  const [cx, cy] = centroid(points);
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of points) {
    xx += (x - cx) ** 2;
    xy += (x - cx) * (y - cy);
    yy += (y - cy) ** 2;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const first = points[0];
  const last = points[points.length - 1];
  const forward =
    (last[0] - first[0]) * Math.cos(angle) + (last[1] - first[1]) * Math.sin(angle) >= 0 ? 1 : -1;
  return { kind: 'line', at: [cx, cy], along: [forward * Math.cos(angle), forward * Math.sin(angle)] };
}

/** The circle of least squared distances, Gauss-Newton from the algebraic circle; null when the points make none. */
export function fitCircle(points: readonly Point[]): Circle | null {
  return points.length < LEAST_ON_ARC ? null : refined(points, algebraicCircle(points));
}

/** The arc of that circle, walked from the first point to the last; null when the points make no arc. */
export function fitArc(points: readonly Point[]): Round | null {
  const circle = fitCircle(points);
  return circle && arcAlong(points, circle);
}

/** The part of a circle along points on it; null when they are as good as straight or go nearly all round. */
export function arcAlong(points: readonly Point[], [x, y, radius]: Circle): Round | null {
  const angles = points.map((p) => Math.atan2(p[1] - y, p[0] - x));
  let [walked, least, most] = [0, 0, 0];
  for (let i = 1; i < angles.length; i++) {
    walked += wrapAngle(angles[i] - angles[i - 1]);
    least = Math.min(least, walked);
    most = Math.max(most, walked);
  }
  const sweep = most - least;
  if (sweep > LONGEST_ARC || radius * (1 - Math.cos(Math.min(sweep, Math.PI) / 2)) < LEAST_BULGE) return null;
  const middle = wrapAngle(angles[0] + (least + most) / 2);
  return { kind: 'arc', center: [x, y], radius, middle, sense: walked > 0 ? 1 : -1 };
}

/** Whether a side may stand for the points: moved to the middle of them, it strays from none by more than STRAY. */
export function covers(side: Side, points: readonly Point[]): boolean {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const p of points) {
    const off = away(side, p);
    if (off < least) least = off;
    if (off > most) most = off;
  }
  return most - least <= 2 * STRAY;
}

function centroid(points: readonly Point[]): Point {
  let [x, y] = [0, 0];
  for (const p of points) {
    x += p[0];
    y += p[1];
  }
  return [x / points.length, y / points.length];
}

export type Circle = [x: number, y: number, radius: number];

/** Kasa's fit: least squares of |p - c|^2 - r^2, linear in the unknowns. */
function algebraicCircle(points: readonly Point[]): Circle | null {
  const [cx, cy] = centroid(points);
  let [xx, xy, yy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const p of points) {
    const [x, y] = [p[0] - cx, p[1] - cy];
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
    zz += z;
  }
  const det = xx * yy - xy * xy;
  if (det <= 1e-9 * (xx + yy) ** 2) return null;
  const a = (xz * yy - yz * xy) / (2 * det);
  const b = (yz * xx - xz * xy) / (2 * det);
  return [cx + a, cy + b, Math.sqrt(a * a + b * b + zz / points.length)];
}

/** A few Gauss-Newton steps on the distances themselves; the algebraic circle of a flat noisy arc is too small. */
function refined(points: readonly Point[], start: Circle | null): Circle | null {
  let circle = start;
  for (let step = 0; circle && step < 8; step++) {
    const [x, y, r] = circle;
    // normal equations of residual d - r with gradient (-ux, -uy, -1)
    let [aa, ab, ac, bb, bc, ra, rb, rc] = [0, 0, 0, 0, 0, 0, 0, 0];
    for (const p of points) {
      const d = Math.hypot(p[0] - x, p[1] - y);
      if (d === 0) return null;
      const [ux, uy, off] = [(p[0] - x) / d, (p[1] - y) / d, d - r];
      aa += ux * ux;
      ab += ux * uy;
      ac += ux;
      bb += uy * uy;
      bc += uy;
      ra += ux * off;
      rb += uy * off;
      rc += off;
    }
    const n = points.length;
    const det = aa * (bb * n - bc * bc) - ab * (ab * n - bc * ac) + ac * (ab * bc - bb * ac);
    if (Math.abs(det) < 1e-12) return circle;
    const dx = (ra * (bb * n - bc * bc) - ab * (rb * n - bc * rc) + ac * (rb * bc - bb * rc)) / det;
    const dy = (aa * (rb * n - rc * bc) - ra * (ab * n - bc * ac) + ac * (ab * rc - rb * ac)) / det;
    const dr = (aa * (bb * rc - bc * rb) - ab * (ab * rc - ac * rb) + ra * (ab * bc - bb * ac)) / det;
    circle = [x + dx, y + dy, r + dr];
    if (!(circle[2] > 0) || !Number.isFinite(circle[2])) return null;
    if (Math.abs(dx) + Math.abs(dy) + Math.abs(dr) < 1e-7 * r) break;
  }
  return circle;
}
