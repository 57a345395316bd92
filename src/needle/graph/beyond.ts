import { int32s } from '../../geometry/flat.js';
import { groupsOf } from '../../geometry/groups.js';
import { type Known, numberOf } from './known.js';
import type { Passes } from './passes.js';
import type { Layout, Shape } from './shape.js';

/**
 * For each group, how the nodes it shares with later groups hang together there: for each, bit 0 says whether the very
 * next group sews a leg at it, above it the number of its piece in all that lies beyond.
 */
export function piecesBeyond(layout: Layout, passes: Passes, known: Known): Int32Array {
  const groups = layout.shapeOf.length;
  const out = int32s(groups);
  const number = (text: string) => numberOf(text, text, known.boundaries, known.boundaryNumbers);
  out[groups - 1] = number('');
  for (let g = groups - 1; g > 0; g--) {
    const key = known.befores.of(layout.shapeOf[g], passes.of[g], out[g]);
    known.before[key] ??= number(
      piecesOf(layout.shapes[layout.shapeOf[g]], passes.patterns[passes.of[g]], known.boundaries[out[g]]),
    );
    out[g - 1] = known.before[key];
  }
  return out;
}

function piecesOf(shape: Shape, passes: Uint8Array, further: string): string {
  const { of: find, join } = groupsOf(shape.nodes);
  const near = new Array<boolean>(shape.nodes).fill(false);
  const sewn = new Array<boolean>(shape.nodes).fill(false);
  passes.forEach((count, leg) => {
    if (count === 0) return;
    for (const node of [shape.from[leg], shape.to[leg]]) {
      near[node] = true;
      sewn[node] = true;
    }
    join(shape.from[leg], shape.to[leg]);
  });
  const first: number[] = [];
  shape.right.forEach((node, i) => {
    const piece = further.charCodeAt(i) >> 1;
    if (piece === 0) return;
    sewn[node] = true;
    if (first[piece] === undefined) first[piece] = node;
    else join(node, first[piece]);
  });
  const names = new Map<number, number>();
  let text = '';
  for (const node of shape.left) {
    let piece = 0;
    if (sewn[node]) {
      const root = find(node);
      if (!names.has(root)) names.set(root, names.size + 1);
      piece = names.get(root)!;
    }
    text += String.fromCharCode(2 * piece + (near[node] ? 1 : 0));
  }
  return text;
}
