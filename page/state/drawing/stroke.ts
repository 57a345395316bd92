import simplify from 'simplify-js';
import type { SeamDrawing, SeamNode } from '../../../src/formats/seam-drawing.js';
import { distance, type Point } from '../../../src/geometry/point.js';
import { nodesThrough } from './lines.js';
import { snapped } from './snap.js';

/** A line shorter than this is no seam, mm: the least repeat of a stitch is longer. */
export const SHORTEST = 3;
/** A hand trembles so much with a pen, mm. */
const TREMBLE = 0.7;

/** A stroke of the hand as a curve through a few places; both ends are drawn to what is near. Null where it is too short. */
export function strokeNodes(
  places: readonly Point[],
  drawing: SeamDrawing,
  reach: number,
): SeamNode[] | null {
  const thinned = simplify(
    places.map(([x, y]) => ({ x, y })),
    TREMBLE,
    true,
  ).map(({ x, y }): Point => [x, y]);
  const ends = [thinned[0], thinned[thinned.length - 1]].map((p) => snapped(p, drawing, reach).at);
  const through = [ends[0], ...thinned.slice(1, -1), ends[1]];
  const length = through.slice(1).reduce((sum, p, i) => sum + distance(through[i], p), 0);
  return length < SHORTEST ? null : nodesThrough(through, true);
}
