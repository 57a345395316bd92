import { nearestOnSegment } from './nearest.js';
import type { Point } from './point.js';
import { firstPoint, lastPoint, type Points, pointCount, toPoints } from './polyline.js';

/** A place that a fitted curve passes through, and how far its control points stand off before and after it. */
export interface CurveNode {
  readonly at: Point;
  readonly before: Point | null;
  readonly after: Point | null;
}

/** paper's own declarations leave out how scopes are made and let go. */
interface PaperCore {
  readonly PaperScope: new () => paper.PaperScope & { remove(): void };
}

/**
 * A line without corners as few cubic curves, or as one straight stretch where it is one; by paper's fitting (Schneider,
 * Graphics Gems, 1990), in a scope of its own. Both ends stay where they are.
 *
 * @param tolerance how far the curves may stray from the points, mm
 */
export async function fittedCurve(line: Points, tolerance: number): Promise<CurveNode[]> {
  const [start, end] = [firstPoint(line), lastPoint(line)];
  const points = toPoints(line);
  if (pointCount(line) < 3 || points.every((p) => nearestOnSegment(p, start, end).distance <= tolerance)) {
    return [start, end].map((at) => ({ at, before: null, after: null }));
  }
  const core = (await import('paper/dist/paper-core.js')).default as unknown as PaperCore;
  const scope = new core.PaperScope();
  scope.setup(new scope.Size(1, 1));
  const path = new scope.Path({ insert: false, segments: points.map(([x, y]) => [x, y]) });
  path.simplify(tolerance);
  const nodes = path.segments.map(
    ({ point, handleIn, handleOut }): CurveNode => ({
      at: [point.x, point.y],
      before: handleIn.isZero() ? null : [handleIn.x, handleIn.y],
      after: handleOut.isZero() ? null : [handleOut.x, handleOut.y],
    }),
  );
  scope.remove();
  nodes[0] = { ...nodes[0], at: start, before: null };
  nodes[nodes.length - 1] = { ...nodes[nodes.length - 1], at: end, after: null };
  return nodes;
}
