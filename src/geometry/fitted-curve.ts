import { fitCubic, type Inner } from './fit-cubic.js';
import { nearestOnSegment } from './nearest.js';
import { between, distance, type Point } from './point.js';
import { type Points, toPoints } from './polyline.js';

/** A place that a fitted curve passes through, and how far its control points stand off before and after it. */
export interface CurveNode {
  readonly at: Point;
  readonly before: Point | null;
  readonly after: Point | null;
}

/** Between points further apart than this there are others looked at as well, mm. */
const STEP = 1;
/** A turn larger than this, and so many times those beside it, is a bend of the line's own, which no curve goes round. */
const BEND = (2 * Math.PI) / 180;
const SHARPER = 3;

/**
 * A line as few cubic curves, and straight stretches where it is straight. Curves run on smoothly into each other except where
 * the line itself bends. Both ends stay where they are.
 *
 * @param tolerance how far it may stray from the line, mm
 */
export function fittedCurve(line: Points, tolerance: number): CurveNode[] {
  const points = closer(toPoints(line));
  const last = points.length - 1;
  const turns = points.map((_, i) => (i === 0 || i === last ? 0 : turnAt(points, i)));
  const bends = points.flatMap((_, i) => (isBend(turns, i) ? [i] : []));
  const ends = [0, ...bends, last];
  const nodes: CurveNode[] = [{ at: points[0], before: null, after: null }];
  for (let k = 1; k < ends.length; k++) {
    for (const { inner, at } of fittedStretch(points.slice(ends[k - 1], ends[k] + 1), tolerance)) {
      const from = nodes.pop()!;
      nodes.push({ ...from, after: inner && off(from.at, inner[0]) });
      nodes.push({ at, before: inner && off(at, inner[1]), after: null });
    }
  }
  return nodes;
}

/** One curve on from the one before, or a straight stretch where it has no inner points. */
interface Stretch {
  readonly inner: Inner | null;
  readonly at: Point;
}

/** A stretch without bends of its own: in even parts where no more of them are needed than of uneven ones. */
function fittedStretch(points: readonly Point[], tolerance: number): Stretch[] {
  const [first, last] = [points[0], points[points.length - 1]];
  if (points.every((p) => nearestOnSegment(p, first, last).distance <= tolerance)) {
    return [{ inner: null, at: last }];
  }
  const uneven = longestFirst(points, tolerance);
  const at = [0];
  for (let i = 1; i < points.length; i++) at.push(at[i - 1] + distance(points[i - 1], points[i]));
  for (let parts = 1; parts <= uneven.length; parts++) {
    const cuts = Array.from({ length: parts + 1 }, (_, k) => indexAt(at, (k * at[at.length - 1]) / parts));
    const fitted = cuts.slice(1).map((to, k) => curveOf(points, cuts[k], to, tolerance));
    if (fitted.every((one) => one !== null)) return fitted;
  }
  return uneven;
}

/** Curve after curve, each as long as it can be. */
function longestFirst(points: readonly Point[], tolerance: number): Stretch[] {
  const stretches: Stretch[] = [];
  for (let from = 0; from < points.length - 1; ) {
    // the longest that serves, looked for by halves
    let [near, far] = [from + 1, points.length];
    let best: Stretch = { inner: null, at: points[near] };
    for (let to = far - 1; to > near; to = (near + far) >> 1) {
      const one = curveOf(points, from, to, tolerance);
      if (one) [near, best] = [to, one];
      else far = to;
    }
    stretches.push(best);
    from = near;
  }
  return stretches;
}

function curveOf(points: readonly Point[], from: number, to: number, tolerance: number): Stretch | null {
  if (to <= from) return null;
  const back = tangentAt(points, to);
  const { inner, strays } = fitCubic(points.slice(from, to + 1), tangentAt(points, from), [
    -back[0],
    -back[1],
  ]);
  return strays <= tolerance ? { inner, at: points[to] } : null;
}

/** Which of the points comes first at a length along the line, or after it. */
const indexAt = (at: readonly number[], length: number): number => {
  const i = at.findIndex((one) => one >= length - 1e-9);
  return i < 0 ? at.length - 1 : i;
};

function closer(points: readonly Point[]): Point[] {
  const all: Point[] = [points[0]];
  for (let i = 1; i < points.length; i++) {
    const steps = Math.ceil(distance(points[i - 1], points[i]) / STEP);
    for (let s = 1; s < steps; s++) all.push(between(points[i - 1], points[i], s / steps));
    all.push(points[i]);
  }
  return all;
}

function turnAt(points: readonly Point[], i: number): number {
  const [u, v] = [off(points[i - 1], points[i]), off(points[i], points[i + 1])];
  return Math.abs(Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]));
}

const isBend = (turns: readonly number[], i: number): boolean =>
  turns[i] > BEND && turns[i] > SHARPER * Math.max(turns[i - 1], turns[i + 1]);

/** The direction of the circle through a point and those beside it; at an end of the one through the first three or the last. */
function tangentAt(points: readonly Point[], i: number): Point {
  const last = points.length - 1;
  if (last < 2) return unit(off(points[0], points[last]));
  const middle = Math.min(Math.max(i, 1), last - 1);
  const u = off(points[middle - 1], points[middle]);
  const v = off(points[middle], points[middle + 1]);
  const [before, after] = [Math.hypot(...u), Math.hypot(...v)];
  const in3: Point = [u[0] * after ** 2 + v[0] * before ** 2, u[1] * after ** 2 + v[1] * before ** 2];
  if (middle === i) return unit(in3);
  // a circle's tangent at one end of a chord is that at the other, mirrored on the chord
  const chord = unit(middle > i ? u : v);
  const tangent = unit(in3);
  const along = 2 * (tangent[0] * chord[0] + tangent[1] * chord[1]);
  return [along * chord[0] - tangent[0], along * chord[1] - tangent[1]];
}

const off = (from: Point, to: Point): Point => [to[0] - from[0], to[1] - from[1]];

function unit([x, y]: Point): Point {
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length];
}
