import { signedArea } from '../geometry/area.js';
import type { Point } from '../geometry/point.js';
import { cumulativeLength, firstPoint, lastPoint, type Points, pointCount } from '../geometry/polyline.js';
import { pointAtLength } from '../geometry/polyline-part.js';
import type { Chain } from './chains.js';
import { cyclePoints } from './faces.js';
import type { Network } from './network.js';

/** Places are compared on a grid this wide, mm: a redrawn line keeps its number. */
const GRID = 0.1;
/** Heights nearer than this are level: a ring's topmost edge starts at its left end. */
const LEVEL = 1e-6;

/** A seam's line before it has a number, running the way it will run. */
export interface OrderedChain extends Chain {
  readonly points: Points;
  /** arc length of the ring's start, measured from the start of its first half-edge; 0 for open seams */
  readonly start: number;
}

const cell = (value: number) => Math.round(value / GRID);

/** Upper first, then left, on the grid; off it only to break ties. */
export function comparePlaces(a: Point, b: Point): number {
  return cell(a[1]) - cell(b[1]) || cell(a[0]) - cell(b[0]);
}

/**
 * Directions and order from geometry alone: an open seam runs from its upper left end, a ring clockwise from its
 * topmost point; seams are sorted by (y, x) of their starts, then of their ends, then of their middles.
 */
export function inOrder(network: Network, chains: readonly Chain[]): OrderedChain[] {
  const ordered = chains.map((chain) => {
    const points = cyclePoints(network, chain.halfEdges);
    const turned = isBackward(points, chain.closed)
      ? { halfEdges: [...chain.halfEdges].reverse().map((h) => h ^ 1), closed: chain.closed }
      : chain;
    return placed(network, turned);
  });
  return ordered
    .map((chain) => ({ chain, keys: keysOf(chain) }))
    .sort((a, b) => {
      for (let i = 0; i < a.keys.length; i++) {
        const order = comparePlaces(a.keys[i], b.keys[i]);
        if (order) return order;
      }
      const [p, q] = [a.keys[2], b.keys[2]];
      return p[1] - q[1] || p[0] - q[0];
    })
    .map(({ chain }) => chain);
}

function isBackward(points: Points, closed: boolean): boolean {
  const [start, end] = [firstPoint(points), lastPoint(points)];
  const order = closed ? 0 : comparePlaces(start, end) || start[1] - end[1] || start[0] - end[0];
  return order === 0 ? signedArea(points) < 0 : order > 0;
}

function placed(network: Network, chain: Chain): OrderedChain {
  const points = cyclePoints(network, chain.halfEdges);
  if (!chain.closed) return { ...chain, points, start: 0 };
  const { ring, start } = fromTop(points);
  return { ...chain, points: ring, start };
}

/** A ring from its topmost vertex (the left one of level ones), and how far along it that was. */
export function fromTop(points: Points): { readonly ring: Points; readonly start: number } {
  const n = pointCount(points) - 1;
  let top = 0;
  for (let i = 1; i < n; i++) {
    const higher = points[2 * top + 1] - points[2 * i + 1];
    const lefter = points[2 * top] - points[2 * i];
    if (higher > LEVEL || (Math.abs(higher) <= LEVEL && lefter > 0)) top = i;
  }
  const ring = new Float64Array(points.length);
  ring.set(points.subarray(2 * top, 2 * n));
  ring.set(points.subarray(0, 2 * top + 2), 2 * (n - top));
  return { ring, start: cumulativeLength(points)[top] };
}

function keysOf({ points }: OrderedChain): [Point, Point, Point] {
  const at = cumulativeLength(points);
  return [firstPoint(points), lastPoint(points), pointAtLength(points, at, at[at.length - 1] / 2)];
}
