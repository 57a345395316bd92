import type { FillRule } from '../geometry/area.js';
import { cubicsOfArc } from '../geometry/ellipse.js';
import type { Point } from '../geometry/point.js';
import type { Piece, Subpath } from './svg-shape.js';

/** paper's own declarations leave out how scopes are made and let go. */
interface PaperCore {
  readonly PaperScope: new () => paper.PaperScope & { remove(): void };
}

/**
 * The border of what a fill covers: lines that neither cross nor overlap, holes among them. Parts of the given lines
 * with the fill on both sides, or on none, are gone. Curves stay curves. By paper's boolean operations, in a scope of
 * its own; where many lines lie on each other its answer may be wrong, so callers check it.
 *
 * @param lines in mm; all are closed
 */
export async function fillBorder(lines: readonly Subpath[], rule: FillRule): Promise<Subpath[]> {
  const core = (await import('paper/dist/paper-core.js')).default as unknown as PaperCore;
  const scope = new core.PaperScope();
  scope.setup(new scope.Size(1, 1));
  const paths = lines.map((line) => {
    const path = new scope.Path({ insert: false, fillRule: rule });
    path.moveTo([...line.start]);
    for (const piece of line.pieces) draw(path, piece);
    path.closePath();
    return path;
  });
  const shape =
    paths.length > 1 ? new scope.CompoundPath({ insert: false, fillRule: rule, children: paths }) : paths[0];
  const united = shape.unite(undefined as unknown as paper.PathItem, { insert: false });
  const rings = (united instanceof scope.CompoundPath ? united.children : [united]) as paper.Path[];
  const border = rings.filter(({ curves }) => curves.length > 1).map(subpathOf);
  scope.remove();
  return border;
}

function draw(path: paper.Path, piece: Piece): void {
  if (piece.kind === 'straight') path.lineTo([...piece.to]);
  else if (piece.kind === 'arc') {
    for (const [a, b, to] of cubicsOfArc(piece.arc)) path.cubicCurveTo([...a], [...b], [...to]);
  } else if (piece.control.length === 4) {
    const [, a, b, to] = piece.control;
    path.cubicCurveTo([...a], [...b], [...to]);
  } else {
    const [, a, to] = piece.control;
    path.quadraticCurveTo([...a], [...to]);
  }
}

function subpathOf({ curves }: paper.Path): Subpath {
  const pieces = curves.map((curve): Piece => {
    const { point1, handle1, handle2, point2 } = curve;
    const [a, b, c, d] = [point1, point1.add(handle1), point2.add(handle2), point2].map(xy);
    return curve.hasHandles() ? { kind: 'bezier', control: [a, b, c, d] } : { kind: 'straight', to: d };
  });
  return { start: xy(curves[0].point1), pieces, closed: true };
}

const xy = ({ x, y }: paper.Point): Point => [x, y];
