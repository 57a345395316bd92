import { signedArea } from '../geometry/area.js';
import { groupsOf } from '../geometry/groups.js';
import { distance, type Point } from '../geometry/point.js';
import { pointAt, pointCount, polylineLength } from '../geometry/polyline.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import type { Edge, Network } from './network.js';
import { mean, withEnds } from './snap-ends.js';

/**
 * Nodes at the two ends of a scrap become one, at the mean of those where most lines meet; dangling scraps go. Says
 * whether any node moved by more than rounding; without scraps the network is given back as it is.
 */
export function withoutScraps(network: Network, snap: number): { joined: Network; moved: boolean } {
  const { nodes, edges } = network;
  const scraps = edges.map((edge) => isScrap(edge, nodes[edge.from], snap));
  if (!scraps.some(Boolean)) return { joined: network, moved: false };
  const degree = new Int32Array(nodes.length);
  for (const { from, to } of edges) {
    degree[from]++;
    degree[to]++;
  }
  const groups = groupsOf(nodes.length);
  edges.forEach(({ from, to }, e) => {
    if (scraps[e]) groups.join(from, to);
  });
  const members = new Map<number, number[]>();
  for (let i = 0; i < nodes.length; i++) {
    const group = members.get(groups.of(i));
    if (group) group.push(i);
    else members.set(groups.of(i), [i]);
  }
  const at: Point[] = [...nodes];
  let moved = false;
  for (const [r, group] of members) {
    if (group.length === 1) continue;
    const most = Math.max(...group.map((i) => degree[i]));
    at[r] = mean(group.filter((i) => degree[i] === most).map((i) => nodes[i]));
    if (group.some((i) => distance(nodes[i], at[r]) > SAME_POINT)) moved = true;
  }
  const kept = edges
    .filter((_, e) => !scraps[e])
    .map((edge) => {
      const [from, to] = [groups.of(edge.from), groups.of(edge.to)];
      return { ...edge, from, to, points: withEnds(edge.points, at[from], at[to]) };
    });
  return { joined: { nodes: at, edges: kept }, moved };
}

/** No longer than the tolerance, or a loop that stays within it or encloses nothing. */
function isScrap({ from, to, points }: Edge, node: Point, snap: number): boolean {
  if (polylineLength(points) <= snap) return true;
  if (from !== to) return false;
  if (Math.abs(signedArea(points)) <= SAME_POINT * SAME_POINT) return true;
  for (let i = 0; i < pointCount(points); i++) if (distance(pointAt(points, i), node) > snap) return false;
  return true;
}
