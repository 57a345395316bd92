import type { Seam, SeamMap } from '../block/seam-map.js';
import { distance, type Point } from '../geometry/point.js';
import { cumulativeLength, type Points } from '../geometry/polyline.js';

/** A place on a seam and the seam's direction there, radians. */
export interface Spot {
  readonly at: Point;
  readonly direction: number;
}

/** The first of some shares of a seam's length whose spot is clear of all junctions; the first of all if none is. */
export function clearSpot(seam: Seam, map: SeamMap, size: number, shares: readonly number[]): Spot {
  const spots = shares.map((share) => along(seam.points, share));
  return spots.find(({ at }) => map.junctions.every((j) => distance(j.at, at) > 1.6 * size)) ?? spots[0];
}

/** Point and direction at a share of a line's length. */
function along(line: Points, share: number): Spot {
  const lengths = cumulativeLength(line);
  const target = lengths[lengths.length - 1] * share;
  let i = 1;
  while (i < lengths.length - 1 && lengths[i] < target) i++;
  const step = lengths[i] - lengths[i - 1];
  const t = step > 0 ? (target - lengths[i - 1]) / step : 0;
  const dx = line[2 * i] - line[2 * i - 2];
  const dy = line[2 * i + 1] - line[2 * i - 1];
  return {
    at: [line[2 * i - 2] + t * dx, line[2 * i - 1] + t * dy],
    direction: Math.atan2(dy, dx),
  };
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
