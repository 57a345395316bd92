import type { Shape } from './shape.js';

/** Units of a stitch have fewer legs than this, and are solved exactly. */
export const MANY_LEGS = 24;

/** The order in which legs are decided: the hand's; in a figure of many legs outward from its first point, so that few points stay open. */
export function workingOrder(shape: Shape): number[] {
  const legs = [...shape.from.keys()];
  if (legs.length <= MANY_LEGS) return legs;
  const touching: number[][] = Array.from({ length: shape.nodes }, () => []);
  for (const leg of legs) {
    touching[shape.from[leg]].push(shape.to[leg]);
    touching[shape.to[leg]].push(shape.from[leg]);
  }
  const rank = new Map<number, number>();
  for (let first = 0; first < shape.nodes; first++) {
    if (rank.has(first)) continue;
    const queue = [first];
    rank.set(first, rank.size);
    // the queue grows while it is walked
    for (const node of queue) {
      for (const next of touching[node]) {
        if (rank.has(next)) continue;
        rank.set(next, rank.size);
        queue.push(next);
      }
    }
  }
  const later = legs.map((leg) => Math.max(rank.get(shape.from[leg])!, rank.get(shape.to[leg])!));
  return legs.sort((a, b) => later[a] - later[b]);
}

/** For each leg, the nodes that no leg decided after it touches, here or in later units. */
export function forgetting(shape: Shape, order: readonly number[]): number[][] {
  const out: number[][] = order.map(() => []);
  const last = new Int32Array(shape.nodes).fill(-1);
  for (const leg of order) {
    last[shape.from[leg]] = leg;
    last[shape.to[leg]] = leg;
  }
  const kept = new Set(shape.right);
  last.forEach((leg, node) => {
    if (leg >= 0 && !kept.has(node)) out[leg].push(node);
  });
  return out;
}
