import { between, distance, type Point, wrapAngle } from '../geometry/point.js';
import { CORNER_TURN, SNAP } from '../geometry/tolerances.js';
import { coverPass } from './sewn-cover.js';
import { covers, fitArc, fitLine } from './sewn-fit.js';
import {
  along,
  away,
  backward,
  directionOn,
  meetings,
  pointOn,
  pointsAlong,
  type Side,
} from './sewn-side.js';

/** One sewn line: what it follows, side by side, and the needle points of all passes that follow it too. */
export interface SewnPath {
  readonly sides: readonly PathSide[];
  readonly closed: boolean;
  /** longest stitch, mm */
  readonly stitch: number;
  /** how far either end may be short of the seam it is meant for, mm */
  readonly reach: readonly [number, number];
  readonly stop: number;
}

export interface PathSide {
  readonly side: Side;
  /** by rising place along the side */
  readonly points: readonly Point[];
}

/** The sides that a pass follows; needle points that fit none are left out. */
export function sidesOf(points: readonly Point[]): PathSide[] {
  return coverPass(points).flatMap(({ side, points }) => (side ? [{ side, points }] : []));
}

/** A side fitted anew to more points, if it then still follows them all; else as it was. */
export function withPoints(old: PathSide, more: readonly Point[]): PathSide {
  const points = [...old.points, ...more].sort((a, b) => along(old.side, a) - along(old.side, b));
  const side = old.side.kind === 'line' ? fitLine(points) : fitArc(points);
  return side && covers(side, points) ? { side, points } : old;
}

export function reversedPath(path: SewnPath): SewnPath {
  const sides = path.sides.map(({ side, points }) => ({
    side: backward(side),
    points: [...points].reverse(),
  }));
  return { ...path, sides: sides.reverse(), reach: [path.reach[1], path.reach[0]] };
}

/** The path on the cloth: points, and for each stretch between two of them the number of its side. */
export interface LaidPath {
  readonly points: readonly Point[];
  readonly sideOf: readonly number[];
}

/** Sides are laid between the corners where they meet, not between needle points. */
export function lay(path: SewnPath): LaidPath {
  const { sides, closed } = path;
  const joints = sides.map((side, i) => {
    const next = sides[(i + 1) % sides.length];
    return i + 1 < sides.length || closed ? joint(side, next) : null;
  });
  const points: Point[] = [];
  const sideOf: number[] = [];
  sides.forEach(({ side, points: needle }, i) => {
    const before = joints[(i + sides.length - 1) % sides.length];
    const from = (i > 0 || closed) && before ? before : pointOn(side, along(side, needle[0]));
    const to = joints[i] ?? pointOn(side, along(side, needle[needle.length - 1]));
    const stretch = pointsAlong(side, along(side, from), along(side, to));
    stretch[0] = from;
    stretch[stretch.length - 1] = to;
    for (const p of i ? stretch.slice(1) : stretch) {
      if (points.length) sideOf.push(i);
      points.push(p);
    }
  });
  return { points, sideOf };
}

/** Where one side goes over into the next: their meeting if it is near, else the middle between both. */
function joint(a: PathSide, b: PathSide): Point {
  const last = a.points[a.points.length - 1];
  const first = b.points[0];
  const middle = between(last, first, 0.5);
  const turn = wrapAngle(
    directionOn(b.side, along(b.side, first)) - directionOn(a.side, along(a.side, last)),
  );
  const corner = Math.abs(turn) > CORNER_TURN;
  const near = (corner ? 1.5 : 0.5) * distance(last, first) + SNAP;
  const [meeting] = meetings(a.side, b.side).sort((p, q) => distance(p, middle) - distance(q, middle));
  if (meeting && distance(meeting, middle) <= near) return meeting;
  const footA = pointOn(a.side, along(a.side, middle));
  const footB = pointOn(b.side, along(b.side, middle));
  return between(footA, footB, 0.5);
}

/** The one side that two stretches of the same line or circle make; null when they are not the same. */
export function sameSide(a: PathSide, b: PathSide): PathSide | null {
  if (a.side.kind !== b.side.kind) return null;
  const facing = wrapAngle(
    directionOn(b.side, along(b.side, b.points[0])) -
      directionOn(a.side, along(a.side, a.points[a.points.length - 1])),
  );
  if (Math.abs(facing) > CORNER_TURN) return null;
  if (Math.abs(away(a.side, b.points[0])) > SNAP) return null;
  const points = [...a.points, ...b.points];
  const side = a.side.kind === 'line' ? fitLine(points) : fitArc(points);
  if (!side || !covers(side, points)) return null;
  return { side, points: points.sort((p, q) => along(side, p) - along(side, q)) };
}
