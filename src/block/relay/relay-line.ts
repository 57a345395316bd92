import { distance, type Point } from '../../geometry/point.js';
import { cumulativeLength, fromPoints, polylineLength } from '../../geometry/polyline.js';
import { pointAtLength } from '../../geometry/polyline-part.js';
import { easedLine } from './eased-line.js';
import { type Stretch, stretchesOf } from './stretches.js';

/** Takes every point of the old block to where it lies on the new one. */
export type Move = (p: Point) => Point;

/** How a block is placed, and how what keeps its size is turned with it. */
export interface Moves {
  /** where a point of this line comes to lie */
  readonly place: Move;
  /** a difference of two points that keep their distance */
  readonly turn: Move;
}

/** Two sides that meet further away than this from where their corner would lie do not meet there, mm. */
const FARTHEST_CORNER = 25;

/** A line whose ends are nearer than this is closed, mm: rounding to machine steps. */
const SAME_PLACE = 0.3;

/**
 * Plain stitches laid again at their own length along the line that they followed: a stretch between two corners gets
 * as many as are nearest to its own stitch length, all alike. Ties keep their size.
 */
export function relayLine(line: readonly Point[], moves: Moves): Point[] {
  const stretches = stretchesOf(line);
  const first = stretches.findIndex(({ isTie }) => !isTie);
  if (first < 0) return hungOn(line, line[0], moves.place(line[0]), moves.turn);
  const paths = meetingPaths(stretches, moves);
  const laid: Point[] = [];
  // ties before the first stretch hang on its start, all others on what they follow
  const ties = stretches.slice(0, first).flatMap(({ points }) => points.slice(0, -1));
  laid.push(
    ...hungOn([...ties, stretches[first].points[0]], stretches[first].points[0], paths[first][0], moves.turn),
  );
  stretches.slice(first).forEach((stretch, k) => {
    const from = laid[laid.length - 1];
    const again = stretch.isTie
      ? hungOn(stretch.points, stretch.points[0], from, moves.turn)
      : stitchesOn([from, ...paths[first + k].slice(1)], stretch);
    laid.push(...again.slice(1));
  });
  return laid;
}

/** Points moved as one with the point they hang on. */
export const hungOn = (points: readonly Point[], from: Point, to: Point, turn: Move): Point[] =>
  points.map(([x, y]) => {
    const [dx, dy] = turn([x - from[0], y - from[1]]);
    return [to[0] + dx, to[1] + dy];
  });

/** The new lines of all stretches. Two that are moved each in its own way are made to meet again at their corner. */
function meetingPaths(stretches: readonly Stretch[], { place }: Moves): Point[][] {
  const paths = stretches.map(({ points }) => easedLine(points).map(place));
  const meet = (k: number, next: number) => {
    const [a, b] = [paths[k], paths[next]];
    const corner = crossing(a[a.length - 3], a[a.length - 2], b[2], b[1]);
    if (!corner || distance(corner, a[a.length - 1]) > FARTHEST_CORNER) return;
    paths[k] = [...upTo(a.slice(0, -1), corner), corner];
    paths[next] = [...upTo(b.slice(1).reverse(), corner), corner].reverse();
  };
  const lines = stretches.flatMap(({ isTie }, k) => (isTie ? [] : [k]));
  for (const k of lines) if (lines.includes(k + 1)) meet(k, k + 1);
  const [first, last] = [lines[0], lines[lines.length - 1]];
  const isClosed = distance(stretches[first].points[0], stretches[last].points.at(-1)!) < SAME_PLACE;
  if (isClosed && lines.length > 2) meet(last, first);
  return paths;
}

/** Where the lines through two pairs of points cross; null when they are nearly parallel. */
function crossing(a: Point, b: Point, c: Point, d: Point): Point | null {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 0.05 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return null;
  const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / cross;
  return [a[0] + t * ux, a[1] + t * uy];
}

/** A path without what lies beyond a corner that it is to end in; its first point stays. */
function upTo(path: readonly Point[], corner: Point): Point[] {
  let end = path.length;
  while (end > 1) {
    const [a, b] = [path[end - 2], path[end - 1]];
    const beyond = (corner[0] - b[0]) * (b[0] - a[0]) + (corner[1] - b[1]) * (b[1] - a[1]) < 0;
    if (!beyond) break;
    end--;
  }
  return path.slice(0, end);
}

function stitchesOn(line: readonly Point[], { points, tieAt }: Stretch): Point[] {
  const path = fromPoints(line);
  const at = cumulativeLength(path);
  const length = at[at.length - 1];
  const stitches = points.length - 1 - Number(tieAt[0]) - Number(tieAt[1]);
  const own = polylineLength(fromPoints(points)) / stitches;
  const count = Math.max(1, Math.round(length / own));
  const places = Array.from({ length: count + 1 }, (_, i) => (length * i) / count);
  const last = points.length - 1;
  if (tieAt[0]) places.splice(1, 0, Math.min(distance(points[0], points[1]), places[1] / 2));
  if (tieAt[1]) {
    const short = Math.min(distance(points[last - 1], points[last]), length / count / 2);
    places.splice(places.length - 1, 0, length - short);
  }
  return places.map((u) => pointAtLength(path, at, u));
}
