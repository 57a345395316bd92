import { applyToPoint, type Matrix } from 'transformation-matrix';
import type { Curve } from '../geometry/arc-length.js';
import { bezierBreaks, bezierCurve } from '../geometry/cubic.js';
import { ellipseBreaks, ellipseCurve } from '../geometry/ellipse.js';
import { flattenCurve } from '../geometry/flatten.js';
import type { Point } from '../geometry/point.js';
import { fromPoints, type Points } from '../geometry/polyline.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import { InputError } from '../input-error.js';
import type { Piece, Subpath } from './svg-shape.js';

/** Nothing that is sewn or pieced is larger; beyond it a file has lost its units, mm. */
const FARTHEST = 10_000;

export interface FlatLine {
  readonly points: Points;
  readonly closed: boolean;
}

/**
 * A shape's line in millimeters, curves as chords. Shapes are transformed first and flattened then, so the bounds hold
 * at actual size. A line whose ends coincide is closed. Null when nothing of it is longer than a point.
 *
 * @throws InputError when a coordinate is no number or lies beyond 10 m
 */
export function flattenSubpath(subpath: Subpath, toMm: Matrix, place: string): FlatLine | null {
  const move = (p: Point): Point => {
    const q = applyToPoint(toMm, [p[0], p[1]]) as [number, number];
    if (!(Math.abs(q[0]) <= FARTHEST && Math.abs(q[1]) <= FARTHEST)) {
      const found = q.every(Number.isFinite) ? `${Math.round(q[0])}, ${Math.round(q[1])} mm` : 'no number';
      const right = 'give finite coordinates and a width and height in mm';
      throw new InputError('bad-coordinate', place, `a point lies at ${found}`, right);
    }
    return q;
  };
  const turn = (v: Point): Point => [toMm.a * v[0] + toMm.c * v[1], toMm.b * v[0] + toMm.d * v[1]];
  const points: Point[] = [];
  const add = (p: Point) => {
    const last = points.at(-1);
    if (!last || Math.hypot(p[0] - last[0], p[1] - last[1]) > SAME_POINT) points.push(p);
  };
  add(move(subpath.start));
  for (const piece of subpath.pieces) for (const p of flatPiece(piece, move, turn)) add(p);

  const first = points[0];
  const gap = () =>
    Math.hypot(points[points.length - 1][0] - first[0], points[points.length - 1][1] - first[1]);
  if (points.length > 2 && gap() <= 10 * SAME_POINT) points[points.length - 1] = first;
  else if (subpath.closed) add(first);
  if (points.length < 2) return null;
  return { points: fromPoints(points), closed: points.length > 2 && gap() === 0 };
}

/** The points of a piece after its first, in millimeters. */
function flatPiece(piece: Piece, move: (p: Point) => Point, turn: (v: Point) => Point): Point[] {
  if (piece.kind === 'straight') return [move(piece.to)];
  let curve: Curve;
  let breaks: number[];
  let end: Point;
  if (piece.kind === 'bezier') {
    const control = piece.control.map(move);
    end = control[control.length - 1];
    if (control.every((p) => p[0] === end[0] && p[1] === end[1])) return [end];
    curve = bezierCurve(control);
    breaks = bezierBreaks(control);
  } else {
    const { center, a, b, from, to } = piece.arc;
    move([center[0] + a[0] + b[0], center[1] + a[1] + b[1]]);
    const arc = { center: move(center), a: turn(a), b: turn(b), from, to };
    end = move(piece.to);
    curve = ellipseCurve(arc);
    breaks = ellipseBreaks(arc);
  }
  return [...flattenCurve(curve, breaks).slice(1, -1), end];
}
