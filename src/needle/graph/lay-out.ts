import type { Chain } from '../../fit/fit.js';
import { int32s } from '../../geometry/flat.js';
import { alike, keyOf, shapeFrom } from './draft.js';
import { type Known, numberOf, type Scratch } from './known.js';
import type { Part } from './part.js';
import type { Layout } from './shape.js';
import { lengthsOf } from './typical-lengths.js';

const UNDER = 1;
const SEEN = 3;

/** Numbers of every node and leg of a part within its unit, and the shapes that come out of it. */
export function layOut(
  chain: Chain,
  part: Part,
  legLength: Float64Array,
  known: Known,
  scratch: Scratch,
): Layout {
  const groups = part.start.length - 1;
  countUses(chain, part, scratch);
  const { stamp, local, localBefore, lastUse } = scratch;
  const nodes: number[] = [];
  const nodeStart = int32s(groups + 1);
  const shapeOf = int32s(groups);
  let [unit, previous] = scratch.drafts;
  let recent = -1;
  const finish = (g: number) => {
    if (recent < 0 || !alike(known.shapes[recent], previous)) {
      const shape = shapeFrom(previous);
      recent = numberOf(shape, keyOf(shape), known.shapes, known.shapeNumbers);
    }
    shapeOf[g] = recent;
  };
  for (let g = 0; g < groups; g++) {
    const base = nodes.length;
    const first = part.start[g];
    unit.legs = part.start[g + 1] - first;
    for (let i = 0; i < unit.legs; i++) {
      const leg = part.legs[first + i];
      const a = chain.from[leg];
      const b = chain.to[leg];
      if (stamp[a] !== g) meet(a, g, base, nodes, scratch);
      if (stamp[b] !== g) meet(b, g, base, nodes, scratch);
      const asked = chain.passes[leg];
      unit.from[i] = local[a];
      unit.to[i] = local[b];
      unit.asked[i] = chain.kind[leg] === 'knot' && asked > 1 ? 1 : asked;
      unit.price[i] = chain.kind[leg] === 'under' ? UNDER : SEEN;
      unit.legClass[i] = chain.legClass[leg];
    }
    // what the unit before shares with later ones
    const { shared } = previous;
    const open = g > 0 ? previous.open : 0;
    for (let i = 0; i < open; i++) if (stamp[shared[i]] !== g) meet(shared[i], g, base, nodes, scratch);
    nodeStart[g + 1] = nodes.length;
    sortByLocal(shared, open, local);
    unit.closed = open;
    for (let i = 0; i < open; i++) {
      unit.left[i] = local[shared[i]];
      previous.right[i] = localBefore[shared[i]];
    }
    if (g > 0) finish(g - 1);
    unit.open = 0;
    unit.seams = 0;
    for (let i = base; i < nodes.length; i++) {
      const node = nodes[i];
      if (lastUse[node] <= g) continue;
      unit.shared[unit.open++] = node;
      if (g === 0 && atRingSeam(node, groups, scratch)) unit.seam[unit.seams++] = local[node];
    }
    unit.nodes = nodes.length - base;
    unit.first = g === 0;
    unit.last = g === groups - 1;
    [unit, previous] = [previous, unit];
  }
  finish(groups - 1);
  return {
    shapes: known.shapes,
    shapeOf,
    lengths: lengthsOf(part, shapeOf, legLength, scratch),
    nodes,
    nodeStart,
  };
}

/** By insertion: there are few, and mostly they are in order. */
function sortByLocal(nodes: number[], count: number, local: Int32Array): void {
  for (let i = 1; i < count; i++) {
    const node = nodes[i];
    let j = i;
    for (; j > 0 && local[nodes[j - 1]] > local[node]; j--) nodes[j] = nodes[j - 1];
    nodes[j] = node;
  }
}

function meet(
  node: number,
  g: number,
  base: number,
  nodes: number[],
  { stamp, local, localBefore }: Scratch,
): void {
  stamp[node] = g;
  localBefore[node] = local[node];
  local[node] = nodes.length - base;
  nodes.push(node);
}

function countUses(chain: Chain, part: Part, scratch: Scratch): void {
  const { lastUse, uses } = scratch;
  for (let g = 0; g + 1 < part.start.length; g++) {
    for (let i = part.start[g]; i < part.start[g + 1]; i++) {
      const a = chain.from[part.legs[i]];
      const b = chain.to[part.legs[i]];
      if (lastUse[a] !== g) uses[a]++;
      lastUse[a] = g;
      if (lastUse[b] !== g) uses[b]++;
      lastUse[b] = g;
    }
  }
}

function atRingSeam(node: number, groups: number, { lastUse, uses }: Scratch): boolean {
  return groups > 2 && lastUse[node] === groups - 1 && uses[node] === 2;
}
