import type { Point } from './point.js';
import { type Points, pointCount } from './polyline.js';
import { SAME_POINT } from './tolerances.js';

/** Area inside a closed polyline, mm2: positive when it runs clockwise as drawn (y down), negative the other way. */
export function signedArea(ring: Points): number {
  let sum = 0;
  const [ox, oy] = [ring[0], ring[1]];
  for (let i = 0; i + 1 < pointCount(ring); i++) {
    sum += (ring[2 * i] - ox) * (ring[2 * i + 3] - oy) - (ring[2 * i + 2] - ox) * (ring[2 * i + 1] - oy);
  }
  return sum / 2;
}

/** Tells every place where rings cross a level line, and whether they go down there as drawn (y rising). */
function crossLevel(rings: readonly Points[], y: number, take: (x: number, down: boolean) => void): void {
  for (const ring of rings) {
    for (let i = 0; i + 1 < pointCount(ring); i++) {
      const y0 = ring[2 * i + 1];
      const y1 = ring[2 * i + 3];
      if (y0 > y === y1 > y) continue;
      const x0 = ring[2 * i];
      take(x0 + ((y - y0) / (y1 - y0)) * (ring[2 * i + 2] - x0), y1 > y0);
    }
  }
}

/** Whether a point lies inside rings by the even-odd rule: an outer ring and its holes together, or one ring alone. */
export function insideRings([x, y]: Point, rings: readonly Points[]): boolean {
  let inside = false;
  crossLevel(rings, y, (at) => {
    if (x < at) inside = !inside;
  });
  return inside;
}

/** What closed lines cover by one of two rules (Scalable Vector Graphics 2, section 13.4.2: fill-rule). */
export interface Area {
  readonly rings: readonly Points[];
  readonly rule: FillRule;
}

export type FillRule = 'nonzero' | 'evenodd';

export function insideArea(p: Point, { rings, rule }: Area): boolean {
  return rule === 'evenodd' ? insideRings(p, rings) : windingNumber(p, rings) !== 0;
}

/** How often rings wind round a point, clockwise as drawn: upward and downward crossings of the level to its right. */
function windingNumber([x, y]: Point, rings: readonly Points[]): number {
  let turns = 0;
  crossLevel(rings, y, (at, down) => {
    if (x < at) turns += down ? 1 : -1;
  });
  return turns;
}

/** A point well inside an area: the middle of the widest crossing of seven level lines. Null when it has no inside. */
export function pointInside(rings: readonly Points[]): Point | null {
  let [top, bottom] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i += 2) {
      top = Math.min(top, ring[i]);
      bottom = Math.max(bottom, ring[i]);
    }
  }
  let best: Point | null = null;
  let widest = SAME_POINT;
  // levels off the simple fractions, where drawings put their vertices
  for (const share of [0.5077, 0.3719, 0.6413, 0.2337, 0.7731, 0.1093, 0.8969]) {
    const y = top + share * (bottom - top);
    const crossing: number[] = [];
    crossLevel(rings, y, (at) => void crossing.push(at));
    crossing.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossing.length; i += 2) {
      const width = crossing[i + 1] - crossing[i];
      if (width > widest) {
        widest = width;
        best = [(crossing[i] + crossing[i + 1]) / 2, y];
      }
    }
  }
  return best;
}
