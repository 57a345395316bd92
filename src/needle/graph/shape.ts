import type { Chain } from '../../fit/fit.js';
import type { Part } from './part.js';

/**
 * The structure of one unit, apart from where it lies: units of one shape are routed once. Nodes are numbered by first
 * appearance in its legs; nodes that only pass by (shared by units before and after) follow.
 */
export interface Shape {
  readonly id: number;
  readonly nodes: number;
  /** shared with earlier units, ascending: the order of a state at the boundary before this unit */
  readonly left: readonly number[];
  /** shared with later units, in the order in which the next unit has them as its `left` */
  readonly right: readonly number[];
  readonly from: Uint16Array;
  readonly to: Uint16Array;
  /** passes asked; a knot counts as one */
  readonly asked: Uint8Array;
  /** what an added pass costs per mm: 1 on an under-leg, 3 where it is seen */
  readonly price: Uint8Array;
  readonly first: boolean;
  readonly last: boolean;
}

/** A part as a sequence of shapes. */
export interface Layout {
  readonly shapes: readonly Shape[];
  /** index into `shapes`, for each group of the part */
  readonly shapeOf: Int32Array;
  /** mean length of each leg of a shape over all its units, mm */
  readonly lengths: readonly Float64Array[];
  /** chain nodes of group g by local number: nodes[nodeStart[g] + local] */
  readonly nodes: Int32Array;
  readonly nodeStart: Int32Array;
}

const UNDER = 1;
const SEEN = 3;

/** Numbers of every node and leg of a part within its unit, and the shapes that come out of it. */
export function layOut(chain: Chain, part: Part, legLength: Float64Array): Layout {
  const groups = part.start.length - 1;
  const lastUse = new Map<number, number>();
  for (let g = 0; g < groups; g++) {
    for (let i = part.start[g]; i < part.start[g + 1]; i++) {
      lastUse.set(chain.from[part.legs[i]], g);
      lastUse.set(chain.to[part.legs[i]], g);
    }
  }
  const nodes: number[] = [];
  const nodeStart = new Int32Array(groups + 1);
  const local = new Map<number, number>();
  const lefts: number[][] = [];
  const rights: number[][] = [];
  let frontier: number[] = [];
  let before = new Map<number, number>();
  for (let g = 0; g < groups; g++) {
    local.clear();
    const meet = (node: number) => {
      if (local.has(node)) return;
      local.set(node, local.size);
      nodes.push(node);
    };
    for (let i = part.start[g]; i < part.start[g + 1]; i++) {
      meet(chain.from[part.legs[i]]);
      meet(chain.to[part.legs[i]]);
    }
    for (const node of frontier) meet(node);
    nodeStart[g + 1] = nodes.length;
    const shared = [...frontier].sort((a, b) => local.get(a)! - local.get(b)!);
    lefts.push(shared.map((node) => local.get(node)!));
    if (g > 0) rights.push(shared.map((node) => before.get(node)!));
    frontier = nodes.slice(nodeStart[g]).filter((node) => lastUse.get(node)! > g);
    before = new Map(local);
  }
  rights.push([]);
  return gather(chain, part, legLength, lefts, rights, Int32Array.from(nodes), nodeStart);
}

function gather(
  chain: Chain,
  part: Part,
  legLength: Float64Array,
  lefts: readonly number[][],
  rights: readonly number[][],
  nodes: Int32Array,
  nodeStart: Int32Array,
): Layout {
  const groups = part.start.length - 1;
  const shapes: Shape[] = [];
  const lengths: Float64Array[] = [];
  const times: number[] = [];
  const known = new Map<string, number>();
  const shapeOf = new Int32Array(groups);
  const number = new Map<number, number>();
  for (let g = 0; g < groups; g++) {
    number.clear();
    for (let i = nodeStart[g]; i < nodeStart[g + 1]; i++) number.set(nodes[i], i - nodeStart[g]);
    const first = part.start[g];
    const n = part.start[g + 1] - first;
    const from = new Uint16Array(n);
    const to = new Uint16Array(n);
    const asked = new Uint8Array(n);
    const price = new Uint8Array(n);
    const key: number[] = [n, number.size, g === 0 ? 1 : 0, g === groups - 1 ? 1 : 0];
    for (let i = 0; i < n; i++) {
      const leg = part.legs[first + i];
      from[i] = number.get(chain.from[leg])!;
      to[i] = number.get(chain.to[leg])!;
      asked[i] = chain.kind[leg] === 'knot' ? Math.min(1, chain.passes[leg]) : chain.passes[leg];
      price[i] = chain.kind[leg] === 'under' ? UNDER : SEEN;
      key.push(from[i], to[i], asked[i], price[i], chain.legClass[leg]);
    }
    key.push(lefts[g].length, ...lefts[g], ...rights[g]);
    const text = String.fromCharCode(...key);
    let id = known.get(text);
    if (id === undefined) {
      id = shapes.length;
      known.set(text, id);
      lengths.push(new Float64Array(n));
      times.push(0);
      const ends = { first: g === 0, last: g === groups - 1 };
      shapes.push({
        id,
        nodes: number.size,
        left: lefts[g],
        right: rights[g],
        from,
        to,
        asked,
        price,
        ...ends,
      });
    }
    shapeOf[g] = id;
    times[id]++;
    for (let i = 0; i < n; i++) lengths[id][i] += legLength[part.legs[first + i]];
  }
  lengths.forEach((sum, id) => {
    for (let i = 0; i < sum.length; i++) sum[i] /= times[id];
  });
  return { shapes, shapeOf, lengths, nodes, nodeStart };
}
