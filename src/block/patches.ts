import type { Point } from '../geometry/point.js';
import { cumulativeLength, type Points, pointCount } from '../geometry/polyline.js';
import type { Regions } from './regions.js';
import type { Patch } from './seam-map.js';
import { comparePlaces, fromTop } from './seam-order.js';

/** The faces as patches, numbered by (y, x) of their centers of area; and each face's number. */
export function patchesOf({ faces }: Regions): {
  readonly list: readonly Patch[];
  readonly idOfFace: readonly number[];
} {
  const centers = faces.map(({ boundary }) => centerOf(boundary));
  const order = faces.map((_, f) => f);
  order.sort((a, b) => {
    const [p, q] = [centers[a], centers[b]];
    return comparePlaces(p, q) || faces[b].area - faces[a].area || p[1] - q[1] || p[0] - q[0];
  });
  const idOfFace: number[] = [];
  order.forEach((f, i) => {
    idOfFace[f] = i + 1;
  });
  const list = order.map((f, i): Patch => {
    const { boundary, holes, area, fabric } = faces[f];
    return {
      id: i + 1,
      area,
      fabric,
      boundary: fromTop(boundary).ring,
      holes: holes.map((hole) => fromTop(hole).ring),
    };
  });
  return { list, idOfFace };
}

/** Center of area of a closed polyline; of one without area, the middle of its points. */
function centerOf(ring: Points): Point {
  const [ox, oy] = [ring[0], ring[1]];
  let [area, x, y] = [0, 0, 0];
  for (let i = 0; i + 1 < pointCount(ring); i++) {
    const x0 = ring[2 * i] - ox;
    const y0 = ring[2 * i + 1] - oy;
    const x1 = ring[2 * i + 2] - ox;
    const y1 = ring[2 * i + 3] - oy;
    const cross = x0 * y1 - x1 * y0;
    area += cross;
    x += (x0 + x1) * cross;
    y += (y0 + y1) * cross;
  }
  return area === 0 ? [ox, oy] : [ox + x / (3 * area), oy + y / (3 * area)];
}

/** How wide a thin patch is, mm: twice its area by its whole border. A square gives half its side. */
export function thickness({ area, boundary, holes }: Patch): number {
  const border = [boundary, ...holes].reduce((sum, ring) => sum + (cumulativeLength(ring).at(-1) ?? 0), 0);
  return (2 * area) / border;
}
