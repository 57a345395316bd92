import { type NeedlePoints, SHORTEST_EVER } from './needle-points.js';

/** Length of a tie's stitches, mm. */
export const TIE = 0.6;

/** Ties the thread on at the start of the current run: forward, back, forward on the line of its first leg, which ends at point `legEnd`. */
export function tieIn(points: NeedlePoints, legEnd: number): void {
  const start = points.runStart;
  const { at, next } = spot(points, start, legEnd, 1);
  const x = points.xy[2 * start];
  const y = points.xy[2 * start + 1];
  points.replace(start, next, [x, y, ...at, x, y, ...at]);
}

/** Ties off at the end of the current run: forward, back, forward on the line of its last leg, which starts at point `legStart`. */
export function tieOff(points: NeedlePoints, legStart: number): number {
  const end = points.count - 1;
  const { at, next } = spot(points, end, legStart, -1);
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
): { at: [number, number]; next: number } {
  const { xy } = points;
  let walked = 0;
  for (let i = from; i !== to; i += step) {
    const j = i + step;
    const dx = xy[2 * j] - xy[2 * i];
    const dy = xy[2 * j + 1] - xy[2 * i + 1];
    const length = Math.hypot(dx, dy);
    if (walked + length >= TIE) {
      const t = (TIE - walked) / length;
      const at: [number, number] = [xy[2 * i] + dx * t, xy[2 * i + 1] + dy * t];
      for (let next = j; ; next += step) {
        if (Math.hypot(xy[2 * next] - at[0], xy[2 * next + 1] - at[1]) >= SHORTEST_EVER) return { at, next };
        if (next === to) break;
      }
      break;
    }
    walked += length;
  }
  return { at: [xy[2 * to], xy[2 * to + 1]], next: to + step };
}
