import { nearestOnSegment } from '../geometry/nearest.js';
import type { Point } from '../geometry/point.js';
import type { Points } from '../geometry/polyline.js';
import type { Runs } from '../needle/run.js';

/** Long stitches are looked at in steps of this, mm. */
const STEP = 1;
/** Sine of the least angle at which one line is said to meet another. */
const LEAST_SLANT = 0.3;

/**
 * How far from its start a line first has thread within a distance to either side, mm along it; null when nowhere. `at` is
 * the line's length up to each of its points.
 */
export function leastAlong(
  line: Points,
  at: Float64Array,
  threads: readonly Runs[],
  beside: number,
): number | null {
  const most = at[at.length - 1];
  // the nearest straight across is a good first answer: little is nearer along the line
  let [nearest, nearX, nearY] = [Number.POSITIVE_INFINITY, 0, 0];
  for (const { xy } of threads) {
    for (let i = 0; i < xy.length; i += 2) {
      const [dx, dy] = [xy[i] - line[0], xy[i + 1] - line[1]];
      const square = dx * dx + dy * dy;
      if (square < nearest) [nearest, nearX, nearY] = [square, xy[i], xy[i + 1]];
    }
  }
  let least = along(line, at, nearX, nearY, beside, Number.POSITIVE_INFINITY) ?? Number.POSITIVE_INFINITY;
  for (const { xy } of threads) {
    for (let i = 0; i < xy.length; i += 2) {
      // no way along the line is shorter than straight across
      const limit = Math.min(least, most) + beside;
      const [dx, dy] = [xy[i] - line[0], xy[i + 1] - line[1]];
      if (dx * dx + dy * dy > limit * limit) continue;
      least = Math.min(least, along(line, at, xy[i], xy[i + 1], beside, least) ?? least);
    }
  }
  return least === Number.POSITIVE_INFINITY ? null : least;
}

/**
 * How far up a line thread of another comes that meets it at its start, mm: from the point where both meet, the line leads
 * in one direction and the other in its own, radians, beside which its thread is looked at as far as `wide`, before `to`.
 */
export function coveredBy(
  [x0, y0]: Point,
  direction: number,
  other: { readonly direction: number; readonly threads: readonly Runs[] },
  wide: number,
  to: number,
): number {
  const [dx, dy] = [Math.cos(direction), Math.sin(direction)];
  // along a line that is nearly its own continuation, thread is looked at square across
  const isSlanting = Math.abs(Math.sin(other.direction - direction)) > LEAST_SLANT;
  const [ox, oy] = isSlanting ? [Math.cos(other.direction), Math.sin(other.direction)] : [-dy, dx];
  const cross = dx * oy - dy * ox;
  let most = 0;
  const look = (x: number, y: number) => {
    const [px, py] = [x - x0, y - y0];
    const beside = (dx * py - dy * px) / cross;
    if (beside > wide || beside < (isSlanting ? -STEP / 2 : -wide)) return;
    const up = (px * oy - py * ox) / cross;
    if (up < to) most = Math.max(most, up);
  };
  // what is seen lies within this of the point
  const around = wide + to;
  const isAway = (a: number, b: number) => (a < -around && b < -around) || (a > around && b > around);
  for (const { xy, start } of other.threads) {
    for (let run = 0; run + 1 < start.length; run++) {
      const last = start[run + 1] - 1;
      look(xy[2 * last], xy[2 * last + 1]);
      for (let i = start[run]; i < last; i++) {
        const [x, y, toX, toY] = [xy[2 * i], xy[2 * i + 1], xy[2 * i + 2], xy[2 * i + 3]];
        if (isAway(x - x0, toX - x0) || isAway(y - y0, toY - y0)) continue;
        const steps = Math.max(1, Math.floor(Math.hypot(toX - x, toY - y) / STEP));
        for (let k = 0; k < steps; k++) look(x + ((toX - x) * k) / steps, y + ((toY - y) * k) / steps);
      }
    }
  }
  return most;
}

/**
 * How far apart thread stands along its line where that stands open from repeat to repeat: each repeat has one such gap
 * at most, and half of them are no wider. The first repeats tell, up to `to` mm along the line.
 */
export function typicalGap(
  line: Points,
  at: Float64Array,
  threads: readonly Runs[],
  beside: number,
  to: number,
  repeats: number,
): number {
  const found: number[] = [];
  const around = to + beside;
  for (const { xy } of threads) {
    for (let i = 0; i < xy.length; i += 2) {
      const [dx, dy] = [xy[i] - line[0], xy[i + 1] - line[1]];
      if (dx * dx + dy * dy > around * around) continue;
      const u = along(line, at, xy[i], xy[i + 1], beside, to);
      if (u !== null) found.push(u);
    }
  }
  const sorted = Float64Array.from(found).sort();
  const gaps = sorted
    .subarray(1)
    .map((u, k) => u - sorted[k])
    .sort();
  return gaps[gaps.length - 1 - Math.floor(repeats / 2)] ?? 0;
}

/** Where on a line, mm along it, the place lies that is nearest to a point; null when that is too far beside it. */
function along(
  line: Points,
  at: Float64Array,
  x: number,
  y: number,
  beside: number,
  to: number,
): number | null {
  let best: number | null = null;
  let least = beside;
  for (let i = 0; i + 1 < at.length && at[i] < to; i++) {
    const { t, distance } = nearestOnSegment(
      [x, y],
      [line[2 * i], line[2 * i + 1]],
      [line[2 * i + 2], line[2 * i + 3]],
    );
    if (distance > least) continue;
    least = distance;
    best = at[i] + t * (at[i + 1] - at[i]);
  }
  return best;
}
