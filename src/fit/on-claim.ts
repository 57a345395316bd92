import { insideIndex } from '../geometry/inside-index.js';
import { lineIndex } from '../geometry/line-index.js';
import type { Points } from '../geometry/polyline.js';

/** A needle point may lie this far outside of what its treatment claims, mm: so that points meant to be on the edge stay. */
export const CLAIM_SLACK = 0.05;

/** Asks whether places lie on the cloth that a treatment claims, polygons that may touch or overlap. */
export function onClaim(polygons: readonly Points[]): (x: number, y: number) => boolean {
  const inside = polygons.map(insideIndex);
  const edge = lineIndex(polygons.map((xy) => ({ xy, start: Int32Array.of(0, xy.length / 2) })));
  return (x, y) => inside.some((isIn) => isIn(x, y)) || edge.distance(x, y, CLAIM_SLACK) <= CLAIM_SLACK;
}
