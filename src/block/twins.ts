import { nearestOnSegment } from '../geometry/nearest.js';
import type { Point } from '../geometry/point.js';
import { type Points, pointAt, pointCount, polylineLength } from '../geometry/polyline.js';
import type { Network } from './network.js';
import { isRing } from './pieces.js';

/** Of edges between the same two nodes that lie within the tolerance all along, only the longest. */
export function withoutTwins({ nodes, edges }: Network, snap: number): Network {
  const byEnds = new Map<string, number[]>();
  edges.forEach(({ from, to }, e) => {
    const key = from < to ? `${from} ${to}` : `${to} ${from}`;
    byEnds.set(key, [...(byEnds.get(key) ?? []), e]);
  });
  const dropped = new Set<number>();
  for (const group of byEnds.values()) {
    if (group.length < 2) continue;
    const longest = [...group].sort(
      (a, b) => polylineLength(edges[b].points) - polylineLength(edges[a].points),
    );
    longest.forEach((e, i) => {
      const twin = longest
        .slice(0, i)
        .some((f) => !dropped.has(f) && runsAlong(edges[e].points, edges[f].points, snap));
      if (twin) dropped.add(e);
    });
  }
  return { nodes, edges: edges.filter((_, e) => !dropped.has(e)) };
}

function runsAlong(line: Points, other: Points, reach: number): boolean {
  if (isRing(line)) return false;
  for (let i = 0; i + 1 < pointCount(line); i++) {
    const [a, b] = [pointAt(line, i), pointAt(line, i + 1)];
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    if (i > 0 && !near(a, other, reach)) return false;
    if (!near(middle, other, reach)) return false;
  }
  return true;
}

function near(p: Point, line: Points, reach: number): boolean {
  for (let i = 0; i + 1 < pointCount(line); i++) {
    if (nearestOnSegment(p, pointAt(line, i), pointAt(line, i + 1)).distance <= reach) return true;
  }
  return false;
}
