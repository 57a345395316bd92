import { between, distance, type Point, wrapAngle } from '../geometry/point.js';
import { CORNER_TURN, SNAP } from '../geometry/tolerances.js';
import { coverPass } from './sewn-cover.js';
import { covers, fitArc, fitLine, STRAY } from './sewn-fit.js';
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

/** No points are laid this near a joint, mm: both sides may pass it by a tenth, which must not look like a corner. */
const EASED = 1;

/** A side is fitted to fewer points than it was only if at least so many are left: one more than define an arc. */
const ENOUGH = 4;

/** One sewn line: what it follows, side by side, and the needle points of all passes that follow it too. */
export interface SewnPath {
  readonly sides: readonly PathSide[];
  readonly closed: boolean;
  /** longest stitch, mm */
  readonly stitch: number;
  /** how far either end may be short of the seam it is meant for, mm */
  readonly reach: readonly [number, number];
  readonly stop: number;
  /** of its last pass, see Pass */
  readonly order: number;
}

export interface PathSide {
  readonly side: Side;
  /** by rising place along the side */
  readonly points: readonly Point[];
}

/** The sides that a pass follows; needle points that fit none are left out. */
export function sidesOf(points: readonly Point[], onOther: readonly [boolean, boolean]): PathSide[] {
  return coverPass(points, onOther).flatMap(({ side, points }) => (side ? [{ side, points }] : []));
}

/** A side fitted anew to more points, if it then still follows them all; else as it was. */
export function withPoints(old: PathSide, more: readonly Point[]): PathSide {
  const points = [...old.points, ...more].sort((a, b) => along(old.side, a) - along(old.side, b));
  const side = sideThrough(old.side, points);
  return side && covers(side, points) ? { side, points } : old;
}

export function reversedPath(path: SewnPath): SewnPath {
  const sides = path.sides.map(({ side, points }) => ({
    side: backward(side),
    points: [...points].reverse(),
  }));
  return { ...path, sides: sides.reverse(), reach: [path.reach[1], path.reach[0]] };
}

/**
 * The path without the needle points past its settled ends, its end sides fitted anew; it then falls short of those ends
 * by up to a stitch. An end side goes if the one before it follows what is left of it as well: straight tails are sewn
 * off arcs.
 */
export function withoutOverruns(path: SewnPath, settled: readonly Point[]): SewnPath {
  if (path.closed) return path;
  const cutEnd = withoutPointsPast(path, settled[settled.length - 1]);
  const cut = reversedPath(withoutPointsPast(reversedPath(cutEnd), settled[0]));
  return reversedPath(endSideFitted(reversedPath(endSideFitted(cut))));
}

function withoutPointsPast(path: SewnPath, end: Point): SewnPath {
  const last = path.sides[path.sides.length - 1];
  const points = last.points.filter((p) => along(last.side, p) <= along(last.side, end) + STRAY);
  if (points.length === 0 || points.length === last.points.length) return path;
  const reach = [path.reach[0], Math.max(path.reach[1], path.stitch + SNAP)] as const;
  return { ...path, sides: [...path.sides.slice(0, -1), { ...last, points }], reach };
}

function endSideFitted(path: SewnPath): SewnPath {
  const last = path.sides[path.sides.length - 1];
  const rest = path.sides.slice(0, -1);
  const before = rest[rest.length - 1];
  if (before && Math.abs(turnBetween(before, last)) < CORNER_TURN) {
    const goesOn = withPoints(before, last.points);
    if (goesOn !== before) return { ...path, sides: [...rest.slice(0, -1), goesOn] };
  }
  return last.points.length < ENOUGH ? path : { ...path, sides: [...rest, withPoints(last, [])] };
}

/** A side of the same kind fitted to other points, in order along it. */
function sideThrough(like: Side, points: readonly Point[]): Side | null {
  return like.kind === 'line' ? fitLine(points) : fitArc(points);
}

/** Both ends of an open path continued along their sides as far as they reach, from the end outward. */
export function beyondEnds({ sides, reach }: SewnPath): readonly [Point[], Point[]] {
  const first = sides[0];
  const last = sides[sides.length - 1];
  const from = along(first.side, first.points[0]);
  const to = along(last.side, last.points[last.points.length - 1]);
  return [
    pointsAlong(first.side, from, from - Math.max(SNAP, reach[0])),
    pointsAlong(last.side, to, to + Math.max(SNAP, reach[1])),
  ];
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
    const inner = stretch.slice(1, -1).filter((p) => distance(p, from) > EASED && distance(p, to) > EASED);
    for (const p of i ? [...inner, to] : [from, ...inner, to]) {
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
  const corner = Math.abs(turnBetween(a, b)) > CORNER_TURN;
  const near = (corner ? 1.5 : 0.5) * distance(last, first) + SNAP;
  const [meeting] = meetings(a.side, b.side).sort((p, q) => distance(p, middle) - distance(q, middle));
  if (meeting && distance(meeting, middle) <= near) return meeting;
  const footA = pointOn(a.side, along(a.side, middle));
  const footB = pointOn(b.side, along(b.side, middle));
  return between(footA, footB, 0.5);
}

/** How far the walk turns from the last needle point of one side to the first of the next, radians. */
function turnBetween(a: PathSide, b: PathSide): number {
  const from = directionOn(a.side, along(a.side, a.points[a.points.length - 1]));
  return wrapAngle(directionOn(b.side, along(b.side, b.points[0])) - from);
}

/** The one side that two stretches of the same line or circle make; null when they are not the same. */
export function sameSide(a: PathSide, b: PathSide): PathSide | null {
  if (a.side.kind !== b.side.kind) return null;
  if (Math.abs(turnBetween(a, b)) > CORNER_TURN) return null;
  if (Math.abs(away(a.side, b.points[0])) > SNAP) return null;
  const points = [...a.points, ...b.points];
  const side = sideThrough(a.side, points);
  if (!side || !covers(side, points)) return null;
  return { side, points: points.sort((p, q) => along(side, p) - along(side, q)) };
}
