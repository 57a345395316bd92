import type { Trail } from './trail.js';

/**
 * An Euler trail of a multigraph (Hierholzer 1873): edge e is sewn `passes[e]` times. Starts at an odd node when there are any, the one
 * that the edges name first; null when the sewn edges have more than two odd nodes or do not hang together. Linear.
 */
export function eulerTrail(
  nodes: number,
  from: ArrayLike<number>,
  to: ArrayLike<number>,
  passes: ArrayLike<number>,
): Trail | null {
  const edges = from.length;
  const degree = new Int32Array(nodes);
  const touching = new Int32Array(nodes + 1);
  let total = 0;
  for (let e = 0; e < edges; e++) {
    total += passes[e];
    degree[from[e]] += passes[e];
    degree[to[e]] += passes[e];
    touching[from[e] + 1]++;
    touching[to[e] + 1]++;
  }
  for (let n = 0; n < nodes; n++) touching[n + 1] += touching[n];
  const at = touching.slice(0, nodes);
  const list = new Int32Array(2 * edges);
  let odd = 0;
  for (let n = 0; n < nodes; n++) odd += degree[n] & 1;
  if (odd > 2) return null;
  let start = -1;
  for (let e = 0; e < edges; e++) {
    list[at[from[e]]++] = e;
    list[at[to[e]]++] = e;
    if (passes[e] === 0 || (start >= 0 && (odd === 0 || degree[start] & 1))) continue;
    for (const n of [to[e], from[e]]) if (start < 0 || degree[n] & 1) start = n;
  }
  if (start < 0) return new Int32Array(0);
  const left = Uint16Array.from({ length: edges }, (_, e) => passes[e]);
  const next = touching.slice(0, nodes);
  const stack = [start];
  const taken: number[] = [];
  const out = new Int32Array(total);
  let end = total;
  while (stack.length > 0) {
    const node = stack[stack.length - 1];
    while (next[node] < touching[node + 1] && left[list[next[node]]] === 0) next[node]++;
    if (next[node] < touching[node + 1]) {
      const e = list[next[node]];
      left[e]--;
      const back = from[e] !== node;
      stack.push(back ? from[e] : to[e]);
      taken.push(2 * e + (back ? 1 : 0));
    } else {
      stack.pop();
      if (taken.length > 0) out[--end] = taken.pop()!;
    }
  }
  return end === 0 ? out : null;
}
