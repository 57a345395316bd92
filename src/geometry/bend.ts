import { between, distance, type Point } from './point.js';

/** The inner control points of a cubic curve. */
export type Controls = readonly [Point, Point];

/**
 * The curve from a to b that passes through a place half-way: across the chord it rises as a circle does, and along the
 * chord it leans to where the place is. Null where the place lies on the chord, which then is no curve.
 *
 * Half-way a cubic lies at (a + 3 c1 + 3 c2 + b) / 8. The controls of a circle's arc of angle w stand off from its ends by
 * 4/3 tan(w/4) radii along its tangents, and tan(w/4) is twice its rise by its chord.
 */
export function bentThrough(a: Point, b: Point, through: Point, straight = 0.05): Controls | null {
  const chord = distance(a, b);
  if (chord === 0) return null;
  const [tx, ty] = [(b[0] - a[0]) / chord, (b[1] - a[1]) / chord];
  const [mx, my] = [through[0] - (a[0] + b[0]) / 2, through[1] - (a[1] + b[1]) / 2];
  const rise = ty * mx - tx * my;
  if (Math.abs(rise) <= straight) return null;
  const lean = (4 / 3) * (tx * mx + ty * my);
  const quarter = (2 * rise) / chord;
  // along the chord and across it, from the ends: of an arc whose quarter angle has this tangent
  const along = (chord / 3) * (1 - quarter * quarter);
  const across = (4 / 3) * rise;
  const at = (u: number): Point => [a[0] + tx * u + ty * across, a[1] + ty * u - tx * across];
  return [at(along + lean), at(chord - along + lean)];
}

/**
 * Where the controls of a curve that runs on smoothly through a point stand off from it, before and after: along the line
 * between its neighbors, a third of the way to each (a cubic spline after Catmull and Rom, with chords for its steps).
 */
export function smoothThrough(before: Point, at: Point, after: Point): Controls {
  const whole = distance(before, after);
  const [tx, ty] = whole > 0 ? [(after[0] - before[0]) / whole, (after[1] - before[1]) / whole] : [0, 0];
  const [back, on] = [distance(before, at) / 3, distance(at, after) / 3];
  return [
    [-tx * back, -ty * back],
    [tx * on, ty * on],
  ];
}

/** A cubic curve cut in two at a parameter: the control points of both parts (de Casteljau). */
export function cutCubic(
  [a, b, c, d]: readonly [Point, Point, Point, Point],
  t: number,
): readonly [readonly [Point, Point, Point, Point], readonly [Point, Point, Point, Point]] {
  const [ab, bc, cd] = [between(a, b, t), between(b, c, t), between(c, d, t)];
  const [abc, bcd] = [between(ab, bc, t), between(bc, cd, t)];
  const at = between(abc, bcd, t);
  return [
    [a, ab, abc, at],
    [at, bcd, cd, d],
  ];
}
