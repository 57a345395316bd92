import type { Curve } from '../geometry/arc-length.js';
import { bezierBreaks, bezierCurve } from '../geometry/cubic.js';
import { ellipseBreaks, ellipseCurve } from '../geometry/ellipse.js';
import { flattenCurve } from '../geometry/flatten.js';
import { distance, type Point } from '../geometry/point.js';
import { fromPoints, type Points } from '../geometry/polyline.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import type { Piece, Subpath } from './svg-shape.js';

export interface FlatLine {
  readonly points: Points;
  readonly closed: boolean;
}

/**
 * A line in millimeters with its curves as chords. A line whose ends coincide is closed. Null when nothing of it is
 * longer than a point.
 */
export function flattenSubpath(subpath: Subpath): FlatLine | null {
  const points: Point[] = [];
  const add = (p: Point) => {
    const last = points.at(-1);
    if (!last || distance(p, last) > SAME_POINT) points.push(p);
  };
  add(subpath.start);
  for (const piece of subpath.pieces) for (const p of flatPiece(piece)) add(p);

  const first = points[0];
  const gap = () => distance(points[points.length - 1], first);
  if (points.length > 2 && gap() <= 10 * SAME_POINT) points[points.length - 1] = first;
  else if (subpath.closed) add(first);
  if (points.length < 2) return null;
  return { points: fromPoints(points), closed: points.length > 2 && gap() === 0 };
}

/** The points of a piece after its first. */
function flatPiece(piece: Piece): Point[] {
  if (piece.kind === 'straight') return [piece.to];
  let curve: Curve;
  let breaks: number[];
  let end: Point;
  if (piece.kind === 'bezier') {
    const { control } = piece;
    end = control[control.length - 1];
    if (control.every((p) => p[0] === end[0] && p[1] === end[1])) return [end];
    curve = bezierCurve(control);
    breaks = bezierBreaks(control);
  } else {
    end = piece.to;
    curve = ellipseCurve(piece.arc);
    breaks = ellipseBreaks(piece.arc);
  }
  return [...flattenCurve(curve, breaks).slice(1, -1), end];
}
