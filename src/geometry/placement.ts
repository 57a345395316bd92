import type { Point } from './point.js';
import { type Points, pointCount } from './polyline.js';

/** A likeness: made larger about the origin, turned counterclockwise as seen, then moved. Never turned over. */
export interface Placement {
  readonly scale: number;
  /** degrees, counterclockwise as drawn (y down) */
  readonly turn: number;
  /** mm */
  readonly shift: Point;
}

/** Cosine and sine of quarter turns, without the rounding that would put a level line out of level. */
const QUARTERS: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/** Cosine and sine of an angle in degrees; exact for quarter turns. */
export function turnOf(degrees: number): readonly [cos: number, sin: number] {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) return QUARTERS[((quarters % 4) + 4) % 4];
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}

/** Turns and moves a vector's direction; its length is as it was. */
export function turnedVector([x, y]: Point, degrees: number): Point {
  const [cos, sin] = turnOf(degrees);
  return [x * cos + y * sin, y * cos - x * sin];
}

export function placedPoint(p: Point, { scale, turn, shift }: Placement): Point {
  const [x, y] = turnedVector(p, turn);
  return [scale * x + shift[0], scale * y + shift[1]];
}

/** The point that lies at `p` once it is placed. */
export function unplacedPoint([x, y]: Point, { scale, turn, shift }: Placement): Point {
  return turnedVector([(x - shift[0]) / scale, (y - shift[1]) / scale], -turn);
}

export function placedLine(line: Points, { scale, turn, shift }: Placement): Points {
  const [cos, sin] = turnOf(turn);
  const placed = new Float64Array(line.length);
  for (let i = 0; i < pointCount(line); i++) {
    const [x, y] = [line[2 * i], line[2 * i + 1]];
    placed[2 * i] = scale * (x * cos + y * sin) + shift[0];
    placed[2 * i + 1] = scale * (y * cos - x * sin) + shift[1];
  }
  return placed;
}

export const isAsItWas = ({ scale, turn }: Pick<Placement, 'scale' | 'turn'>): boolean =>
  scale === 1 && turn % 360 === 0;
