import { arcLength, type Curve } from './arc-length.js';
import type { Point } from './point.js';
import { wrapAngle } from './point.js';
import { FLATTEN_LENGTH, FLATTEN_SAG, FLATTEN_TURN } from './tolerances.js';

/** Bisections at most: a stretch of 2^-24 of a curve is shorter than any tolerance here. */
const DEEPEST = 24;

/**
 * Points along a curve such that chords stray at most FLATTEN_SAG from it and turn at most FLATTEN_TURN from one to the
 * next, save at a cusp, where the sharp point itself is found to FLATTEN_SAG. The chords' length is then measured against
 * the curve's own and the bounds are halved until both agree to FLATTEN_LENGTH.
 *
 * @param breaks parameters where the curve may be less smooth or turn back (extremes of its coordinates), ascending;
 *   points are placed there, so that topmost points of rings are vertices
 */
export function flattenCurve(curve: Curve, breaks: readonly number[] = []): Point[] {
  const stops = [curve.from, ...breaks.filter((t) => t > curve.from && t < curve.to), curve.to];
  const length = arcLength(curve);
  let points: Point[] = [];
  for (let part = 1; part <= 64; part *= 2) {
    points = [curve.at(stops[0])];
    for (let i = 1; i < stops.length; i++) bisect(curve, stops[i - 1], stops[i], part, 0, points);
    if (Math.abs(chordLength(points) - length) <= FLATTEN_LENGTH * length) break;
  }
  return points;
}

function bisect(curve: Curve, a: number, b: number, part: number, depth: number, points: Point[]): void {
  if (depth >= DEEPEST || (depth > 0 && flat(curve, a, b, part))) {
    points.push(curve.at(b));
    return;
  }
  const middle = (a + b) / 2;
  bisect(curve, a, middle, part, depth + 1, points);
  bisect(curve, middle, b, part, depth + 1, points);
}

/**
 * Whether one chord may stand for the stretch from a to b: the middle and the quarter points stray little, and the
 * directions there turn little. A stretch as small as the sag is a point, whatever its directions do.
 */
function flat(curve: Curve, a: number, b: number, part: number): boolean {
  const p = curve.at(a);
  const q = curve.at(b);
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const chord = Math.sqrt(dx * dx + dy * dy);
  let size = chord;
  let sag = 0;
  let turned = 0;
  let last: number | null = null;
  for (let i = 0; i <= 4; i++) {
    const t = a + ((b - a) * i) / 4;
    const m = curve.at(t);
    const from = Math.sqrt((m[0] - p[0]) ** 2 + (m[1] - p[1]) ** 2);
    size = Math.max(size, from);
    const across = Math.abs((m[0] - p[0]) * dy - (m[1] - p[1]) * dx);
    sag = Math.max(sag, chord > 0 ? across / chord : from);
    const v = curve.velocity(t);
    if (v[0] === 0 && v[1] === 0) continue;
    const direction = Math.atan2(v[1], v[0]);
    if (last !== null) turned += Math.abs(wrapAngle(direction - last));
    last = direction;
  }
  if (size <= FLATTEN_SAG / part) return true;
  return sag <= FLATTEN_SAG / part && turned <= FLATTEN_TURN / part;
}

function chordLength(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    sum += Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
  }
  return sum;
}
