import { float64s } from '../geometry/flat.js';
import type { Point } from '../geometry/point.js';

/** Chords of a sampled leg turn less than this, in radians: the eye sees a curve. */
const CHORD_TURN = (14 * Math.PI) / 180;
const FEWEST_CHORDS = 6;
const MOST_CHORDS = 128;
/** Where two pieces of a curve meet, half a chord's turn of either adds up. */
const SEEN_TURN = (14.9 * Math.PI) / 180;

/** A straight or bent line through the given points. */
export function polylinePath(points: readonly Point[]): Float64Array {
  const path = float64s(2 * points.length);
  points.forEach(([u, v], i) => {
    path[2 * i] = u;
    path[2 * i + 1] = v;
  });
  return path;
}

/** A quadratic or cubic curve as chords that turn less than 15 degrees each, from first point to last, both exact. */
export function curvePath(points: readonly Point[], fewest = FEWEST_CHORDS): Float64Array {
  const cubic = points.length === 3 ? elevated(points) : points;
  for (let chords = fewest; ; chords = Math.ceil(chords * 1.3)) {
    const path = sampled(cubic, chords);
    if (chords >= MOST_CHORDS || largestTurn(path) < CHORD_TURN) return path;
  }
}

/**
 * A smooth curve led through all the given points: cubic pieces whose tangents are those of the centripetal
 * Catmull-Rom curve, which makes no loops or cusps between its points (Yuksel, Schaefer, Keyser, "On the
 * parameterization of Catmull-Rom curves", 2009; from memory). At its two ends it leaves straight for the next bend.
 */
export function smoothPath(points: readonly Point[]): Float64Array {
  const apart = points.filter(
    (p, i) => i === 0 || Math.hypot(p[0] - points[i - 1][0], p[1] - points[i - 1][1]) > 1e-9,
  );
  if (apart.length < 3) return polylinePath([points[0], points[points.length - 1]]);
  const cubics = apart.slice(1).map((b, i) => {
    const [before, a, after] = [apart[i - 1], apart[i], apart[i + 2]];
    return [a, leaving(before, a, b), leaving(after, b, a), b];
  });
  for (let fewest = FEWEST_CHORDS; ; fewest = Math.ceil(fewest * 1.3)) {
    const path = Float64Array.from(
      cubics.flatMap((cubic, i) => [...curvePath(cubic, fewest).subarray(i === 0 ? 0 : 2)]),
    );
    if (fewest >= MOST_CHORDS || largestTurn(path) < SEEN_TURN) return path;
  }
}

/** Control point beside b on the piece from b to c, when the curve comes from a (undefined where it begins at b). */
function leaving(a: Point | undefined, b: Point, c: Point): Point {
  const to = Math.hypot(c[0] - b[0], c[1] - b[1]);
  if (!a) return [b[0] + (c[0] - b[0]) / 3, b[1] + (c[1] - b[1]) / 3];
  const from = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [s, t] = [Math.sqrt(from), Math.sqrt(to)];
  const tangent = (k: 0 | 1) => (b[k] - a[k]) / s - (c[k] - a[k]) / (s + t) + (c[k] - b[k]) / t;
  return [b[0] + (tangent(0) * t) / 3, b[1] + (tangent(1) * t) / 3];
}

/** The same quadratic curve with the control points of a cubic one. */
function elevated([a, b, c]: readonly Point[]): Point[] {
  const third = (p: Point, q: Point): Point => [
    p[0] + (2 / 3) * (q[0] - p[0]),
    p[1] + (2 / 3) * (q[1] - p[1]),
  ];
  return [a, third(a, b), third(c, b), c];
}

function sampled([a, b, c, d]: readonly Point[], chords: number): Float64Array {
  const path = float64s(2 * chords + 2);
  for (let i = 0; i <= chords; i++) {
    const t = i / chords;
    const s = 1 - t;
    const wa = s * s * s;
    const wb = 3 * s * s * t;
    const wc = 3 * s * t * t;
    const wd = t * t * t;
    path[2 * i] = wa * a[0] + wb * b[0] + wc * c[0] + wd * d[0];
    path[2 * i + 1] = wa * a[1] + wb * b[1] + wc * c[1] + wd * d[1];
  }
  return path;
}

function largestTurn(path: Float64Array): number {
  let largest = 0;
  for (let i = 2; i + 3 < path.length; i += 2) {
    const ax = path[i] - path[i - 2];
    const ay = path[i + 1] - path[i - 1];
    const bx = path[i + 2] - path[i];
    const by = path[i + 3] - path[i + 1];
    largest = Math.max(largest, Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)));
  }
  return largest;
}

/** How far along the petal its control points lie, and how wide, in shares: narrow at the hole, round at the tip. */
const NEAR = { along: 0.32, across: 0.5 };
const FAR = { along: 0.99, across: 1 };
/** The belly of that curve in shares of its `across`: the greatest 3 t (1 - t) (0.5 (1 - t) + t), at t = 1 / sqrt(3). */
const BELLY = 1 / Math.sqrt(3);

/** The two halves of a loop: base to tip by the left side, and tip to base by the right. `width` is across its belly. */
export function loopPaths(base: Point, tip: Point, width: number): [out: Float64Array, back: Float64Array] {
  const [du, dv] = [tip[0] - base[0], tip[1] - base[1]];
  const size = Math.hypot(du, dv) || 1;
  const half = width / 2 / BELLY / size;
  const control = ({ along, across }: typeof NEAR, side: 1 | -1): Point => [
    base[0] + du * along - dv * half * across * side,
    base[1] + dv * along + du * half * across * side,
  ];
  return [
    curvePath([base, control(NEAR, 1), control(FAR, 1), tip]),
    curvePath([tip, control(FAR, -1), control(NEAR, -1), base]),
  ];
}
