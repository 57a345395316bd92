import type { Seam, SeamMap } from '../block/seam-map.js';
import { distance, type Point } from '../geometry/point.js';
import { cumulativeLength, type Points, pointAt } from '../geometry/polyline.js';
import { pointAtLength, segmentAt } from '../geometry/polyline-part.js';

/** A place on a line and the line's direction there, radians. */
export interface Spot {
  readonly at: Point;
  readonly direction: number;
}

/** The first of some shares of a line's length whose spot is clear of some places by 1.6 sizes; the first of all if none is. */
export function clearSpot(
  line: Points,
  places: readonly Point[],
  size: number,
  shares: readonly number[],
): Spot {
  const spots = spotsAlong(line, shares);
  return spots.find(({ at }) => places.every((place) => distance(place, at) > 1.6 * size)) ?? spots[0];
}

/** Where a seam begins, ends and is crossed. */
export const junctionsOn = ({ ends, crossings }: Seam, { junctions }: SeamMap): Point[] =>
  [...(ends ?? []), ...crossings].flatMap(({ junction }) => (junction < 0 ? [] : [junctions[junction].at]));

/** Points and directions at shares of a line's length. */
export function spotsAlong(line: Points, shares: readonly number[]): Spot[] {
  const at = cumulativeLength(line);
  const long = at[at.length - 1];
  return shares.map((share) => {
    const u = share * long;
    const i = segmentAt(at, u);
    const [[ax, ay], [bx, by]] = [pointAt(line, i), pointAt(line, i + 1)];
    return { at: pointAtLength(line, at, u), direction: Math.atan2(by - ay, bx - ax) };
  });
}

/** The point halfway through a figure's longest horizontal inside stretch, on the best of fifteen levels: room for a number. */
export function roomiest(ring: Points): Point {
  let top = Number.POSITIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (let i = 1; i < ring.length; i += 2) {
    top = Math.min(top, ring[i]);
    bottom = Math.max(bottom, ring[i]);
  }
  let best: Point = [ring[0], ring[1]];
  let widest = Number.NEGATIVE_INFINITY;
  for (let level = 1; level <= 15; level++) {
    const y = top + ((bottom - top) * level) / 16;
    const hits = crossingsAt(ring, y);
    for (let k = 0; k + 1 < hits.length; k += 2) {
      const room = Math.min(hits[k + 1] - hits[k], 2 * (y - top), 2 * (bottom - y));
      if (room <= widest) continue;
      widest = room;
      best = [(hits[k] + hits[k + 1]) / 2, y];
    }
  }
  return best;
}

/** Where a level line enters and leaves a figure, ascending. */
function crossingsAt(ring: Points, y: number): number[] {
  const hits: number[] = [];
  for (let i = 0; i + 3 < ring.length; i += 2) {
    const [x0, y0, x1, y1] = [ring[i], ring[i + 1], ring[i + 2], ring[i + 3]];
    if (y0 <= y !== y1 <= y) hits.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
  }
  return hits.sort((a, b) => a - b);
}
