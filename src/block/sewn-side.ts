import { distance, type Point, wrapAngle } from '../geometry/point.js';
import { FLATTEN_SAG, FLATTEN_TURN } from '../geometry/tolerances.js';

/** What a stretch of a sewn line follows: a straight line, or a circle between two of its points. */
export type Side = Straight | Round;

export interface Straight {
  readonly kind: 'line';
  readonly at: Point;
  /** unit vector */
  readonly along: Point;
}

export interface Round {
  readonly kind: 'arc';
  readonly center: Point;
  readonly radius: number;
  /** direction from the center to the middle of the arc; angles are measured from there */
  readonly middle: number;
  /** +1 when angles grow the way the arc is walked */
  readonly sense: 1 | -1;
}

/** Signed distance of a point from the side; its sign is the same for all points to one hand. */
export function away(side: Side, p: Point): number {
  if (side.kind === 'arc') return distance(side.center, p) - side.radius;
  return (p[0] - side.at[0]) * side.along[1] - (p[1] - side.at[1]) * side.along[0];
}

/** How far along the side the foot of a point lies, mm. */
export function along(side: Side, p: Point): number {
  if (side.kind === 'line') {
    return (p[0] - side.at[0]) * side.along[0] + (p[1] - side.at[1]) * side.along[1];
  }
  const angle = Math.atan2(p[1] - side.center[1], p[0] - side.center[0]);
  return side.sense * side.radius * wrapAngle(angle - side.middle);
}

export function pointOn(side: Side, u: number): Point {
  if (side.kind === 'line') return [side.at[0] + u * side.along[0], side.at[1] + u * side.along[1]];
  const angle = side.middle + (side.sense * u) / side.radius;
  return [side.center[0] + side.radius * Math.cos(angle), side.center[1] + side.radius * Math.sin(angle)];
}

/** Direction of walking at u, radians. */
export function directionOn(side: Side, u: number): number {
  if (side.kind === 'line') return Math.atan2(side.along[1], side.along[0]);
  return side.middle + side.sense * (u / side.radius + Math.PI / 2);
}

export function backward(side: Side): Side {
  if (side.kind === 'line') return { ...side, along: [-side.along[0], -side.along[1]] };
  return { ...side, sense: side.sense === 1 ? -1 : 1 };
}

/** Points between two places on the side, both included, dense enough to stand for it. */
export function pointsAlong(side: Side, from: number, to: number): Point[] {
  if (side.kind === 'line') return [pointOn(side, from), pointOn(side, to)];
  const step = Math.min(FLATTEN_TURN, Math.sqrt((8 * FLATTEN_SAG) / side.radius));
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / side.radius / step));
  return Array.from({ length: count + 1 }, (_, i) => pointOn(side, from + ((to - from) * i) / count));
}

/** All points where two sides, followed on without end, meet. */
export function meetings(a: Side, b: Side): Point[] {
  if (a.kind === 'line' && b.kind === 'line') return lineWithLine(a, b);
  if (a.kind === 'line') return lineWithCircle(a, b as Round);
  if (b.kind === 'line') return lineWithCircle(b, a);
  return circleWithCircle(a, b);
}

function lineWithLine(a: Straight, b: Straight): Point[] {
  const cross = a.along[0] * b.along[1] - a.along[1] * b.along[0];
  if (Math.abs(cross) < 1e-9) return [];
  const t = ((b.at[0] - a.at[0]) * b.along[1] - (b.at[1] - a.at[1]) * b.along[0]) / cross;
  return [pointOn(a, t)];
}

function lineWithCircle(line: Straight, circle: Round): Point[] {
  const foot = along(line, circle.center);
  const off = away(line, circle.center);
  const half = circle.radius ** 2 - off ** 2;
  if (half < 0) return [];
  return [pointOn(line, foot - Math.sqrt(half)), pointOn(line, foot + Math.sqrt(half))];
}

function circleWithCircle(a: Round, b: Round): Point[] {
  const gap = distance(a.center, b.center);
  if (gap < 1e-9) return [];
  const toward: Point = [(b.center[0] - a.center[0]) / gap, (b.center[1] - a.center[1]) / gap];
  const u = (gap ** 2 + a.radius ** 2 - b.radius ** 2) / (2 * gap);
  const chord: Straight = {
    kind: 'line',
    at: [a.center[0] + u * toward[0], a.center[1] + u * toward[1]],
    along: [-toward[1], toward[0]],
  };
  return lineWithCircle(chord, a);
}
