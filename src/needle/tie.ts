import { NEARLY_STRAIGHT } from './legs.js';
import { type NeedlePoints, SHORTEST_EVER } from './needle-points.js';

/** Length of a tie's stitches, mm. */
export const TIE = 0.6;
/** Lengths that differ by less are the same, mm: rounding does not decide. */
const SAME = 1e-9;

/** Ties the thread on at the start of the current run: forward, back, forward on the line of its first leg, which ends at point `legEnd`. */
export function tieIn(points: NeedlePoints, legEnd: number, shortest: number): void {
  const start = points.runStart;
  const { at, next } = spot(points, start, legEnd, 1, shortest);
  const x = points.xy[2 * start];
  const y = points.xy[2 * start + 1];
  points.replace(start, next, [x, y, ...at, x, y, ...at]);
}

/** Ties off at the end of the current run: forward, back, forward on the line of its last leg, which starts at point `legStart`. */
export function tieOff(points: NeedlePoints, legStart: number, shortest: number): number {
  const end = points.count - 1;
  const { at, next } = spot(points, end, legStart, -1, shortest);
  const { x, y } = points;
  points.replace(next + 1, end + 1, [...at, x, y, ...at, x, y]);
  return next + 1;
}

/**
 * The point TIE along the run from point `from` toward point `to`, or `to` itself when hardly anything would be left
 * beyond; and the next point to sew after it.
 */
function spot(
  points: NeedlePoints,
  from: number,
  to: number,
  step: 1 | -1,
  shortest: number,
): { at: [number, number]; next: number } {
  const { xy } = points;
  let walked = 0;
  for (let i = from; i !== to; i += step) {
    const j = i + step;
    const dx = xy[2 * j] - xy[2 * i];
    const dy = xy[2 * j + 1] - xy[2 * i + 1];
    const length = Math.hypot(dx, dy);
    if (walked + length >= TIE - SAME) {
      const t = Math.min(1, (TIE - walked) / length);
      const at: [number, number] = [xy[2 * i] + dx * t, xy[2 * i + 1] + dy * t];
      const next = nextAfter(xy, at, j, to, step, shortest);
      if (next === null) break;
      return { at, next };
    }
    walked += length;
  }
  return { at: [xy[2 * to], xy[2 * to + 1]], next: to + step };
}

/**
 * The next point after a tie's: no nearer than the shortest stitch where those between may be left out, or no nearer than any
 * stitch may be; null where even the leg's end is nearer.
 */
function nextAfter(
  xy: Float64Array,
  at: readonly [number, number],
  first: number,
  to: number,
  step: 1 | -1,
  shortest: number,
): number | null {
  let near: number | null = null;
  for (let next = first; ; next += step) {
    const dx = xy[2 * next] - at[0];
    const dy = xy[2 * next + 1] - at[1];
    const length = Math.hypot(dx, dy);
    if (near === null && length >= SHORTEST_EVER - SAME) near = next;
    if (near !== null && (length >= shortest - SAME || next === to)) {
      for (let i = near; i !== next; i += step) {
        const stray = Math.abs(dx * (xy[2 * i + 1] - at[1]) - dy * (xy[2 * i] - at[0])) / length;
        if (stray >= NEARLY_STRAIGHT) return near;
      }
      return next;
    }
    if (next === to) return null;
  }
}
