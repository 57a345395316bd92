import Flatbush from 'flatbush';
import { distance, type Point } from '../geometry/point.js';

/** A line whose ends are still as they were sewn. */
export interface LooseLine {
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** where the line would go on at either end, from the end outward, as far as it may be short of its seam */
  readonly beyond: readonly [readonly Point[], readonly Point[]];
}

/** A line with its ends where they belong; `seated` tells which of them lie on another line. */
export interface Line {
  points: readonly Point[];
  /** length along it at its points, mm */
  at: readonly number[];
  readonly closed: boolean;
  readonly beyond: readonly [readonly Point[], readonly Point[]];
  readonly seated: [boolean, boolean];
}

export interface Lines {
  readonly list: readonly Line[];
  /** numbers of the lines whose boxes, as sewn, come so near a point; rising. Cuts only make lines smaller. */
  near(p: Point, by: number): number[];
  /** the farthest that any line goes on beyond an end, mm */
  readonly longest: number;
}

type Box = readonly [number, number, number, number];

/** One end of a line: its first point (0) or its last. */
export type End = readonly [line: number, end: 0 | 1];

export function linesOf(loose: readonly LooseLine[]): Lines {
  const list = loose.map(
    ({ points, closed, beyond }): Line => ({
      points,
      at: lengths(points),
      closed,
      beyond,
      seated: [closed, closed],
    }),
  );
  const longest = Math.max(0, ...loose.flatMap(({ beyond }) => beyond.map(reachOf)));
  return { list, near: boxesNear(loose.map(({ points }) => boxOf(points))), longest };
}

function boxesNear(boxes: readonly Box[]): Lines['near'] {
  if (!boxes.length) return () => [];
  const index = new Flatbush(boxes.length);
  for (const [left, top, right, bottom] of boxes) index.add(left, top, right, bottom);
  index.finish();
  return ([x, y], by) => index.search(x - by, y - by, x + by, y + by).sort((a, b) => a - b);
}

/** How far a way goes, straight, mm. */
export const reachOf = (way: readonly Point[]): number => distance(way[0], way[way.length - 1]);

export function looseEnds({ list }: Lines): End[] {
  return list.flatMap((line, i) => ([0, 1] as const).filter((e) => !line.seated[e]).map((e): End => [i, e]));
}

/** The point at one end. */
export const tipOf = ({ points }: Line, end: 0 | 1): Point => points[end ? points.length - 1 : 0];

/** The line's points from one end on. */
export const fromEnd = (line: Line, end: 0 | 1): Point[] =>
  end ? [...line.points].reverse() : [...line.points];

/** Gives a line the points, from one end on, that make that end lie where it belongs. */
export function seat(line: Line, end: 0 | 1, points: Point[]): void {
  line.points = end ? points.reverse() : points;
  line.at = lengths(line.points);
  line.seated[end] = true;
}

/** Where p-q crosses a-b: shares of either; a-b is longer by shares `before` and `behind`. */
export function crossing(
  p: Point,
  q: Point,
  a: Point,
  b: Point,
  before: number,
  behind: number,
): { readonly t: number; readonly s: number } | null {
  const [dx, dy, ex, ey] = [q[0] - p[0], q[1] - p[1], b[0] - a[0], b[1] - a[1]];
  const cross = dx * ey - dy * ex;
  if (cross === 0) return null;
  const t = ((a[0] - p[0]) * ey - (a[1] - p[1]) * ex) / cross;
  const s = ((a[0] - p[0]) * dy - (a[1] - p[1]) * dx) / cross;
  return t >= 0 && t <= 1 && s >= -before && s <= 1 + behind ? { t, s } : null;
}

/** Left, top, right and bottom of some points. */
export function boxOf(points: readonly Point[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return [left, top, right, bottom];
}

function lengths(points: readonly Point[]): number[] {
  const at = [0];
  for (let i = 1; i < points.length; i++) at.push(at[i - 1] + distance(points[i - 1], points[i]));
  return at;
}
