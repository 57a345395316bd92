import { OUTLINE, type SeamDrawing } from '../../../src/formats/seam-drawing.js';
import { insideRings } from '../../../src/geometry/area.js';
import { distance, type Point } from '../../../src/geometry/point.js';
import { footOn, pointsOfSeam } from '../../core/drawn-lines.js';
import { allLines } from './lines.js';

/** Where a place was drawn to. */
export interface Snapped {
  readonly at: Point;
  /** what it lies on now: a point where lines end or turn, a seam, the outline; null where it is free */
  readonly on: 'point' | 'seam' | 'outline' | null;
}

/**
 * A place drawn to what is near: first to points of lines, then to lines. What lies outside the block is drawn to its
 * outline, since no seam leaves the cloth.
 *
 * @param reach mm
 * @param but the line that is being changed, which is not drawn to itself
 */
export function snapped(p: Point, drawing: SeamDrawing, reach: number, but: number | null = null): Snapped {
  const lines = allLines(drawing).filter(({ id }) => id !== but);
  let best: Snapped = { at: p, on: null };
  let least = reach;
  for (const { nodes } of lines) {
    for (const { at } of nodes) {
      const off = distance(at, p);
      if (off > least) continue;
      least = off;
      best = { at, on: 'point' };
    }
  }
  if (best.on) return best;
  for (const line of lines) {
    const foot = footOn(pointsOfSeam(line), p);
    // where a seam meets the outline, it is the outline that is meant
    if (foot.distance > least || (foot.distance === least && best.on)) continue;
    least = foot.distance;
    best = { at: foot.at, on: line.id === OUTLINE ? 'outline' : 'seam' };
  }
  if (best.on || but === OUTLINE || !drawing.outline)
    return best.on ? best : { at: inFrame(p, drawing), on: null };
  const edge = pointsOfSeam(drawing.outline);
  return insideRings(p, [edge]) ? best : { at: footOn(edge, p).at, on: 'outline' };
}

const inFrame = ([x, y]: Point, { width, height }: SeamDrawing): Point => [
  Math.min(width, Math.max(0, x)),
  Math.min(height, Math.max(0, y)),
];

/** The line nearest to a place, if one lies within reach; a seam rather than the outline. */
export function lineAt(p: Point, drawing: SeamDrawing, reach: number): number | null {
  let near: number | null = null;
  let least = reach;
  for (const line of allLines(drawing)) {
    const off = footOn(pointsOfSeam(line), p).distance + (line.id === OUTLINE ? reach / 4 : 0);
    if (off > least) continue;
    least = off;
    near = line.id;
  }
  return near;
}
