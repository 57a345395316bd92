import { distance, type Point } from './point.js';

/** The inner control points of a cubic curve. */
export type Inner = readonly [Point, Point];

/** Places along the curve are found again so often: by then they move no more. */
const ROUNDS = 6;

export interface FittedCubic {
  readonly inner: Inner;
  /** how far the curve strays from the points at most, mm */
  readonly strays: number;
}

/**
 * The cubic curve from the first point to the last, along unit tangents, that lies nearest to the points between in the sense
 * of least squares (Schneider, An Algorithm for Automatically Fitting Digitized Curves, Graphics Gems, 1990).
 *
 * @param out direction at the first point, into the curve
 * @param back direction at the last point, into the curve as well
 */
export function fitCubic(points: readonly Point[], out: Point, back: Point): FittedCubic {
  const [a, d] = [points[0], points[points.length - 1]];
  let places = byChords(points);
  let inner = innerOf(points, places, out, back);
  for (let round = 0; round < ROUNDS; round++) {
    places = places.map((t, i) => nearer(points[i], t, a, inner, d));
    inner = innerOf(points, places, out, back);
  }
  const strays = points.reduce(
    (most, p, i) => Math.max(most, distance(p, onCubic(a, inner, d, places[i]))),
    0,
  );
  return { inner, strays };
}

function byChords(points: readonly Point[]): number[] {
  const at = [0];
  for (let i = 1; i < points.length; i++) at.push(at[i - 1] + distance(points[i - 1], points[i]));
  const whole = at[at.length - 1] || 1;
  return at.map((length) => length / whole);
}

/** How far the controls stand off along the tangents: two equations in two unknowns. */
function innerOf(points: readonly Point[], places: readonly number[], out: Point, back: Point): Inner {
  const [a, d] = [points[0], points[points.length - 1]];
  let [oo, ob, bb, xo, xb] = [0, 0, 0, 0, 0];
  points.forEach((p, i) => {
    const [w0, w1, w2, w3] = weights(places[i]);
    const rest: Point = [
      p[0] - (w0 + w1) * a[0] - (w2 + w3) * d[0],
      p[1] - (w0 + w1) * a[1] - (w2 + w3) * d[1],
    ];
    oo += w1 * w1;
    bb += w2 * w2;
    ob += w1 * w2 * dot(out, back);
    xo += w1 * dot(rest, out);
    xb += w2 * dot(rest, back);
  });
  const whole = oo * bb - ob * ob;
  const third = distance(a, d) / 3;
  let [first, second] = [(xo * bb - xb * ob) / whole, (oo * xb - ob * xo) / whole];
  // too few points say nothing, and controls behind their ends make a loop
  if (!(first > 1e-3 * third && second > 1e-3 * third)) [first, second] = [third, third];
  return [
    [a[0] + first * out[0], a[1] + first * out[1]],
    [d[0] + second * back[0], d[1] + second * back[1]],
  ];
}

const weights = (t: number): readonly [number, number, number, number] => {
  const s = 1 - t;
  return [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
};

function onCubic(a: Point, [b, c]: Inner, d: Point, t: number): Point {
  const [w0, w1, w2, w3] = weights(t);
  return [w0 * a[0] + w1 * b[0] + w2 * c[0] + w3 * d[0], w0 * a[1] + w1 * b[1] + w2 * c[1] + w3 * d[1]];
}

/** One step of Newton's to the place of the curve that lies nearest to a point. */
function nearer(p: Point, t: number, a: Point, [b, c]: Inner, d: Point): number {
  const s = 1 - t;
  const [x, y] = onCubic(a, [b, c], d, t);
  const part = (k: 0 | 1): readonly [number, number] => [
    3 * (s * s * (b[k] - a[k]) + 2 * s * t * (c[k] - b[k]) + t * t * (d[k] - c[k])),
    6 * (s * (c[k] - 2 * b[k] + a[k]) + t * (d[k] - 2 * c[k] + b[k])),
  ];
  const [[x1, x2], [y1, y2]] = [part(0), part(1)];
  const [dx, dy] = [x - p[0], y - p[1]];
  const steep = x1 * x1 + y1 * y1 + dx * x2 + dy * y2;
  return steep > 0 ? Math.min(1, Math.max(0, t - (dx * x1 + dy * y1) / steep)) : t;
}

const dot = ([x, y]: Point, [u, v]: Point): number => x * u + y * v;
