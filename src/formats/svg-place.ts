import { applyToPoint, type Matrix } from 'transformation-matrix';
import type { Point } from '../geometry/point.js';
import { InputError } from '../input-error.js';
import type { Piece, Subpath } from './svg-shape.js';

/** Nothing that is sewn or pieced is larger; beyond it a file has lost its units, mm. */
export const FARTHEST = 10_000;

/**
 * A shape's line in millimeters, still made of curves, so that what is measured later holds at actual size.
 *
 * @throws InputError when a coordinate is no number or lies beyond 10 m
 */
export function placeSubpath(subpath: Subpath, toMm: Matrix, place: string): Subpath {
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
  const placed = (piece: Piece): Piece => {
    if (piece.kind === 'straight') return { kind: 'straight', to: move(piece.to) };
    if (piece.kind === 'bezier') return { kind: 'bezier', control: piece.control.map(move) };
    const { center, a, b, from, to } = piece.arc;
    move([center[0] + a[0] + b[0], center[1] + a[1] + b[1]]);
    return {
      kind: 'arc',
      arc: { center: move(center), a: turn(a), b: turn(b), from, to },
      to: move(piece.to),
    };
  };
  return { start: move(subpath.start), pieces: subpath.pieces.map(placed), closed: subpath.closed };
}
