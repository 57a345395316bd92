import type { Piece } from '../formats/svg-shape.js';
import type { Point } from '../geometry/point.js';

/** Where a line ends that starts so. */
export const lastPoint = (start: Point, pieces: readonly Piece[]): Point => {
  const last = pieces[pieces.length - 1];
  if (!last) return start;
  return last.kind === 'bezier' ? last.control[last.control.length - 1] : last.to;
};

/** Points along a line, its start and end left out: enough to lead a curve through. */
export const pointsInside = (start: Point, pieces: readonly Piece[]): Point[] =>
  pieces
    .flatMap((piece, i) => alongPiece(lastPoint(start, i > 0 ? [pieces[i - 1]] : []), piece))
    .slice(0, -1);

/** So many of some points at most, evenly chosen. */
export const thinned = (points: readonly Point[], most: number): readonly Point[] =>
  points.length <= most
    ? points
    : Array.from({ length: most }, (_, i) => points[Math.floor(((i + 0.5) * points.length) / most)]);

/** Points of a piece at its quarters, its end included. */
function alongPiece(start: Point, piece: Piece): Point[] {
  if (piece.kind === 'straight') return [piece.to];
  const at = piece.kind === 'bezier' ? bezierAt(piece.control) : arcAt(piece.arc);
  return [at(0.25), at(0.5), at(0.75), lastPoint(start, [piece])];
}

/** de Casteljau's construction. */
const bezierAt =
  (control: readonly Point[]) =>
  (t: number): Point => {
    let points = control;
    while (points.length > 1) {
      points = points
        .slice(1)
        .map(
          (b, i): Point => [
            points[i][0] + t * (b[0] - points[i][0]),
            points[i][1] + t * (b[1] - points[i][1]),
          ],
        );
    }
    return points[0];
  };

const arcAt =
  ({ center, a, b, from, to }: Extract<Piece, { kind: 'arc' }>['arc']) =>
  (t: number): Point => {
    const angle = from + t * (to - from);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return [center[0] + a[0] * cos + b[0] * sin, center[1] + a[1] * cos + b[1] * sin];
  };
