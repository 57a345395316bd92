import { Bezier } from 'bezier-js';
import type { Corner } from './guide-line.js';
import { wrapAngle } from './point.js';
import { cumulativeLength, type Points, pointCount } from './polyline.js';

/** Chords of a rounded corner turn about this much. */
const CHORD_TURN = (2 * Math.PI) / 180;
/** Rounding takes at most this share of the line between two corners, from each of them. */
const SHARE = 0.45;

/**
 * A polyline whose corners are rounded to the radius that their turn (radians, positive to the left) gets, so that a treatment goes round them instead of turning. Where the
 * line between two corners is too short for the radius, a smaller one is used. Cubic arcs touch the line on both sides
 * (handles 4/3 tan(tau / 4) r, the usual approximation of a circular arc). Corners that stay `sharp` keep theirs.
 *
 * A corner at the start of a closed line is rounded too; the line then starts in the middle of it.
 */
export function roundedCorners(
  points: Points,
  corners: readonly Corner[],
  closed: boolean,
  radius: (turn: number) => number,
  sharp: readonly Corner[] = [],
): Points {
  const at = cumulativeLength(points);
  const length = at[at.length - 1];
  const cutAt = (i: number): number => {
    const here = corners[i];
    const turn = Math.abs(here.turn);
    const before = corners[i - 1]?.u ?? (closed ? corners[corners.length - 1].u - length : 0);
    const after = corners[i + 1]?.u ?? (closed ? corners[0].u + length : length);
    const toSharp = sharp.map(({ u }) => {
      const apart = Math.abs(u - here.u);
      return closed ? Math.min(apart, length - apart) : apart;
    });
    const room = Math.min(here.u - before, after - here.u, ...toSharp);
    return Math.min(radius(here.turn) * Math.tan(turn / 2), room * SHARE);
  };
  const out: number[] = [];
  let from = 0;
  let tail: number[] = [];
  corners.forEach((corner, i) => {
    const cut = cutAt(i);
    const start = placeOn(points, at, corner.u - cut, closed);
    const end = placeOn(points, at, corner.u + cut, closed);
    const turn = Math.abs(wrapAngle(end.theta - start.theta));
    const handle = ((4 / 3) * Math.tan(turn / 4) * cut) / Math.tan(turn / 2);
    const arc = arcBetween(start, end, handle, Math.max(4, Math.ceil(turn / CHORD_TURN)));
    if (corner.u === 0 && closed) {
      const middle = arc.length / 4;
      const half = 2 * Math.round(middle);
      out.push(...arc.slice(half));
      tail = arc.slice(0, half + 2);
      from = cut;
      return;
    }
    pushPart(out, points, at, from, corner.u - cut);
    out.push(...arc);
    from = corner.u + cut;
  });
  const closing = tail.length ? cutAt(0) : 0;
  pushPart(out, points, at, from, length - closing);
  if (tail.length) out.push(...tail);
  else out.push(points[points.length - 2], points[points.length - 1]);
  return Float64Array.from(out);
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly theta: number;
}

function arcBetween(a: Place, b: Place, handle: number, steps: number): number[] {
  const curve = new Bezier(
    a.x,
    a.y,
    a.x + handle * Math.cos(a.theta),
    a.y + handle * Math.sin(a.theta),
    b.x - handle * Math.cos(b.theta),
    b.y - handle * Math.sin(b.theta),
    b.x,
    b.y,
  );
  return Array.from({ length: steps + 1 }, (_, k) => curve.get(k / steps)).flatMap(({ x, y }) => [x, y]);
}

function placeOn(points: Points, at: Float64Array, asked: number, closed: boolean): Place {
  const length = at[at.length - 1];
  const u = closed ? (asked + length) % length : asked;
  let i = 0;
  while (i + 2 < at.length && at[i + 1] < u) i++;
  const dx = points[2 * i + 2] - points[2 * i];
  const dy = points[2 * i + 3] - points[2 * i + 1];
  const t = (u - at[i]) / (at[i + 1] - at[i]);
  return { x: points[2 * i] + t * dx, y: points[2 * i + 1] + t * dy, theta: Math.atan2(dy, dx) };
}

/** The vertices strictly between two places. */
function pushPart(out: number[], points: Points, at: Float64Array, from: number, to: number): void {
  if (from === 0) out.push(points[0], points[1]);
  for (let i = 0; i < pointCount(points); i++) {
    if (at[i] > from + 1e-9 && at[i] < to - 1e-9) out.push(points[2 * i], points[2 * i + 1]);
  }
}
