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

/** The same, and straight on where the line has ended. */
export function placeBeyond(points: Float64Array, u: number): OnLine {
  const on = placeAlong(points, u);
  const over = u < 0 ? u : Math.max(0, u - lengthOf(points));
  const { at, along } = on;
  return { ...on, at: [at[0] + over * along[0], at[1] + over * along[1]] };
}

/** Where a handle may lie, and from where on the line it measures. */
export interface Stand {
  readonly at: readonly [number, number];
  readonly on: OnLine;
}

const NEAR_MIDDLE = [0, -1, 1];
const FARTHER = [-2, 2, -3, 3];

/**
 * Where the handles of a line's size and spacing may lie, mm, the best first: beside its middle, and one repeat along from there;
 * else beside other places, and to the other hand.
 * @param clear how far off what they measure they stand, so that they hide none of it, mm
 */
export function handlePlaces(points: Float64Array, width: number, repeat: number, clear: number) {
  const length = lengthOf(points);
  const off = width / 2 + clear;
  const beside = (steps: readonly number[], by: number): Stand[] =>
    steps
      .map((k) => length / 2 + 1.6 * k * clear)
      .filter((u) => u >= 0 && u <= length)
      .map((u) => placeAlong(points, u))
      .map((on) => ({ at: besideAt(on, by), on }));
  const middle = placeAlong(points, length / 2);
  const spaced = (way: number, aside: number): Stand => {
    const [x, y] = besideAt(middle, aside);
    const by = way * (repeat + clear);
    return { at: [x + by * middle.along[0], y + by * middle.along[1]], on: middle };
  };
  return {
    middle,
    size: [...beside(NEAR_MIDDLE, off), ...beside(NEAR_MIDDLE, -off), ...beside(FARTHER, off)],
    spacing: [0, -off, off].flatMap((aside) => [spaced(1, aside), spaced(-1, aside)]),
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
