import type { Chain } from '../../fit/fit.js';
import type { Scratch } from './known.js';
import type { Part } from './part.js';
import type { Passes } from './passes.js';
import type { Layout } from './shape.js';

/** Local nodes of the first group where the trail may start: its odd nodes, or all that are sewn when it closes. */
export function startsOf(
  chain: Chain,
  part: Part,
  layout: Layout,
  passes: Passes,
  { degree }: Scratch,
): number[] {
  for (let g = 0; g < layout.shapeOf.length; g++) {
    const sewn = passes.patterns[passes.of[g]];
    for (let i = 0; i < sewn.length; i++) {
      const leg = part.legs[part.start[g] + i];
      degree[chain.from[leg]] += sewn[i];
      degree[chain.to[leg]] += sewn[i];
    }
  }
  const isOdd = (local: number) => (degree[layout.nodes[local]] & 1) === 1;
  const shape = layout.shapes[layout.shapeOf[0]];
  const later = new Set(shape.right);
  const sewn = new Set<number>();
  passes.patterns[passes.of[0]].forEach((count, leg) => {
    if (count > 0) sewn.add(shape.from[leg]).add(shape.to[leg]);
  });
  const odd = [...sewn].filter(isOdd);
  for (const node of layout.nodes) degree[node] = 0;
  if (odd.length === 0) return [...sewn];
  const own = odd.filter((local) => !later.has(local));
  return own.length > 0 ? own : odd;
}
