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
  const x0 = line[0];
  const y0 = line[1];
  // the nearest straight across is a good first answer: little is nearer along the line
  let nearest = Infinity;
  let nearX = 0;
  let nearY = 0;
  for (const { xy } of threads) {
    for (let i = 0; i < xy.length; i += 2) {
      const dx = xy[i] - x0;
      const across = dx * dx;
      if (across >= nearest) continue;
      const dy = xy[i + 1] - y0;
      const square = across + dy * dy;
      if (square >= nearest) continue;
      nearest = square;
      nearX = xy[i];
      nearY = xy[i + 1];
    }
  }
  let least = along(line, at, nearX, nearY, beside, Infinity);
  // thread further from the start than this is no nearer along the line, for no way along it is shorter than straight across
  let limit = Math.min(least, most) + beside;
  for (const { xy } of threads) {
    for (let i = 0; i < xy.length; i += 2) {
      const dx = xy[i] - x0;
      if (dx > limit || dx < -limit) continue;
      const dy = xy[i + 1] - y0;
      if (dx * dx + dy * dy > limit * limit) continue;
      const u = along(line, at, xy[i], xy[i + 1], beside, least);
      if (u >= least) continue;
      least = u;
      limit = Math.min(least, most) + beside;
    }
  }
  return least === Infinity ? null : least;
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
  const dx = Math.cos(direction);
  const dy = Math.sin(direction);
  // along a line that is nearly its own continuation, thread is looked at square across
  const isSlanting = Math.abs(Math.sin(other.direction - direction)) > LEAST_SLANT;
  const ox = isSlanting ? Math.cos(other.direction) : -dy;
  const oy = isSlanting ? Math.sin(other.direction) : dx;
  const cross = dx * oy - dy * ox;
  const back = isSlanting ? -STEP / 2 : -wide;
  /** how far up a place comes, 0 for one that is not looked at */
  const upAt = (px: number, py: number): number => {
    const beside = (dx * py - dy * px) / cross;
    if (beside > wide || beside < back) return 0;
    const up = (px * oy - py * ox) / cross;
    return up < to ? up : 0;
  };
  let most = 0;
  // what is seen lies within this of the point
  const around = wide + to;
  for (const { xy, start } of other.threads) {
    for (let run = 0; run + 1 < start.length; run++) {
      const last = start[run + 1] - 1;
      let x = xy[2 * start[run]] - x0;
      let y = xy[2 * start[run] + 1] - y0;
      for (let i = start[run] + 1; i <= last; i++) {
        const toX = xy[2 * i] - x0;
        const toY = xy[2 * i + 1] - y0;
        const isAway =
          (x < -around && toX < -around) ||
          (x > around && toX > around) ||
          (y < -around && toY < -around) ||
          (y > around && toY > around);
        if (!isAway) {
          const long = Math.sqrt((toX - x) * (toX - x) + (toY - y) * (toY - y));
          const steps = Math.max(1, Math.floor(long / STEP));
          for (let k = 0; k < steps; k++) {
            most = Math.max(most, upAt(x + ((toX - x) * k) / steps, y + ((toY - y) * k) / steps));
          }
        }
        x = toX;
        y = toY;
      }
      most = Math.max(most, upAt(x, y));
    }
  }
  return most;
}

/**
 * How far apart thread stands along its line where that stands open from repeat to repeat: between two repeats is one such gap
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
      const dx = xy[i] - line[0];
      const dy = xy[i + 1] - line[1];
      if (dx * dx + dy * dy > around * around) continue;
      const u = along(line, at, xy[i], xy[i + 1], beside, to);
      if (u < Infinity) found.push(u);
    }
  }
  const sorted = Float64Array.from(found).sort();
  const gaps = sorted
    .subarray(1)
    .map((u, k) => u - sorted[k])
    .sort();
  return gaps[gaps.length - 1 - Math.floor((repeats - 1) / 2)] ?? 0;
}

/**
 * Where on a line, mm along it, the place lies that is nearest to a point; Infinity when that is too far beside it. Asked
 * of every needle point, so nothing is made on the way.
 */
function along(line: Points, at: Float64Array, x: number, y: number, beside: number, to: number): number {
  let best = Infinity;
  let least = beside * beside;
  for (let i = 0; i + 1 < at.length && at[i] < to; i++) {
    const dx = line[2 * i + 2] - line[2 * i];
    const dy = line[2 * i + 3] - line[2 * i + 1];
    const px = x - line[2 * i];
    const py = y - line[2 * i + 1];
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / square)) : 0;
    const away = (px - t * dx) * (px - t * dx) + (py - t * dy) * (py - t * dy);
    if (away > least) continue;
    least = away;
    best = at[i] + t * (at[i + 1] - at[i]);
  }
  return best;
}
