import { cumulativeLength } from '../../src/geometry/polyline.js';

/** A place on a line and which way it goes there; mm, `left` is the unit vector to its left hand. */
export interface OnLine {
  readonly at: readonly [number, number];
  readonly along: readonly [number, number];
  readonly left: readonly [number, number];
}

/** The place so far along a line, mm from its start; beyond its ends it is the end. */
export function placeAlong(points: Float64Array, u: number): OnLine {
  const at = cumulativeLength(points);
  let i = 1;
  while (i < at.length - 1 && at[i] < u) i++;
  const length = at[i] - at[i - 1] || 1;
  const t = Math.min(1, Math.max(0, (u - at[i - 1]) / length));
  const [ax, ay, bx, by] = points.subarray(2 * i - 2, 2 * i + 2);
  const along: [number, number] = [(bx - ax) / length, (by - ay) / length];
  return { at: [ax + t * (bx - ax), ay + t * (by - ay)], along, left: [along[1], -along[0]] };
}

export const lengthOf = (points: Float64Array): number => cumulativeLength(points)[points.length / 2 - 1];

/**
 * Where the handles of a line's size and spacing lie, mm: beside its middle, and one repeat along from there.
 * @param clear how far off what they measure they stand, so that they hide none of it, mm
 */
export function handlePlaces(points: Float64Array, width: number, repeat: number, clear: number) {
  const middle = placeAlong(points, lengthOf(points) / 2);
  const [x, y] = middle.at;
  const beside = (by: number): [number, number] => [x + by * middle.left[0], y + by * middle.left[1]];
  const along = repeat + clear;
  return {
    middle,
    size: beside(width / 2 + clear),
    spacing: [x + along * middle.along[0], y + along * middle.along[1]] as const,
    label: beside(-width / 2),
  };
}

/** The measure that a handle means where it was dragged to: how far from the middle it lies, its own way, mm. */
export function measureAt(
  middle: OnLine,
  kind: 'size' | 'spacing',
  at: readonly [number, number],
  clear: number,
): number {
  const [dx, dy] = [at[0] - middle.at[0], at[1] - middle.at[1]];
  const [wx, wy] = kind === 'size' ? middle.left : middle.along;
  return (Math.abs(dx * wx + dy * wy) - clear) * (kind === 'size' ? 2 : 1);
}

/** The place so far to the left of a line, mm. */
export const besideAt = ({ at: [x, y], left: [lx, ly] }: OnLine, by: number): [number, number] => [
  x + by * lx,
  y + by * ly,
];

/** How far to the left of a line another place lies, mm. */
export const acrossOf = ({ at, left }: OnLine, to: readonly [number, number]): number =>
  (to[0] - at[0]) * left[0] + (to[1] - at[1]) * left[1];

/** How far on along a line another place lies, mm. */
export const alongOf = ({ at, along }: OnLine, to: readonly [number, number]): number =>
  (to[0] - at[0]) * along[0] + (to[1] - at[1]) * along[1];

/**
 * Places along a line, one before the other from `from` back to its start, that keep off what stands on it. Where it has no
 * room for all of them the rest stand on each other at its start.
 */
export function freeAlong(
  count: number,
  from: number,
  apart: number,
  taken: readonly number[],
  off: number,
): number[] {
  const free: number[] = [];
  let at = from;
  while (free.length < count && at > off) {
    const near = taken.filter((one) => Math.abs(one - at) < off);
    if (near.length > 0) at = Math.min(...near) - off;
    else {
      free.push(at);
      at -= apart;
    }
  }
  while (free.length < count) free.push(Math.max(0, Math.min(from, off)));
  return free;
}
