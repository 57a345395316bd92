import { nearestOnSegment } from '../../geometry/nearest.js';
import { between, distance, type Point } from '../../geometry/point.js';

/** Between two needle points a line is drawn in so many chords. */
const CHORDS = 6;
/** Needle points on a straight line are rounded to machine steps: no further from it than this, mm. */
const STRAIGHT = 0.1;

/**
 * The line that needle points without corners follow, in short chords: straight where they are straight but for the
 * machine's steps, else a cubic through all of them whose direction at each follows its neighbors (Catmull and Rom,
 * "A class of local interpolating splines", 1974; from memory).
 */
export function easedLine(points: readonly Point[]): Point[] {
  const n = points.length;
  const [first, last] = [points[0], points[n - 1]];
  if (points.every((p) => nearestOnSegment(p, first, last).distance <= STRAIGHT)) {
    const chords = CHORDS * (n - 1);
    return Array.from({ length: chords + 1 }, (_, k) => between(first, last, k / chords));
  }
  const line: Point[] = [first];
  for (let i = 0; i + 1 < n; i++) {
    const [a, b] = [points[i], points[i + 1]];
    const chord: Point = [b[0] - a[0], b[1] - a[1]];
    const size = distance(a, b) || 1;
    const known = [
      i > 0 ? heading(points[i - 1], a, b) : null,
      i + 2 < n ? heading(a, b, points[i + 2]) : null,
    ];
    // at an end the curve bends on as it does at its other end
    const out = known[0] ?? mirrored(known[1]!, chord, size);
    const into = known[1] ?? mirrored(known[0]!, chord, size);
    for (let k = 1; k <= CHORDS; k++) line.push(onCubic(a, b, out, into, size, k / CHORDS));
  }
  return line;
}

/** A point of the cubic from a to b (Hermite's form) that leaves and arrives in these directions. */
function onCubic(a: Point, b: Point, out: Point, into: Point, size: number, t: number): Point {
  const end = t * t * (3 - 2 * t);
  const leave = size * t * (1 - t) * (1 - t);
  const arrive = size * t * t * (t - 1);
  const along = (axis: 0 | 1) =>
    a[axis] + (b[axis] - a[axis]) * end + out[axis] * leave + into[axis] * arrive;
  return [along(0), along(1)];
}

/** Unit direction at b: the mean of both chords, the shorter one counting more. */
function heading(a: Point, b: Point, c: Point): Point {
  const [before, after] = [distance(a, b) || 1, distance(b, c) || 1];
  const x = ((b[0] - a[0]) / before) * after + ((c[0] - b[0]) / after) * before;
  const y = ((b[1] - a[1]) / before) * after + ((c[1] - b[1]) / after) * before;
  const size = Math.hypot(x, y) || 1;
  return [x / size, y / size];
}

/** A direction turned over along a chord. */
function mirrored([x, y]: Point, [cx, cy]: Point, size: number): Point {
  const along = (2 * (x * cx + y * cy)) / (size * size);
  return [along * cx - x, along * cy - y];
}
