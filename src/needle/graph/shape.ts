import type { Chain } from '../../fit/fit.js';
import { type Known, numberOf, type Scratch } from './known.js';
import type { Part } from './part.js';

/**
 * The structure of one unit, apart from where it lies: units of one shape are routed once. Nodes are numbered by first
 * appearance in its legs; nodes that only pass by (shared by units before and after) follow.
 */
export interface Shape {
  readonly nodes: number;
  /** shared with earlier units, ascending: the order of a state at the boundary before this unit */
  readonly left: readonly number[];
  /** shared with later units, in the order in which the next unit has them as its `left` */
  readonly right: readonly number[];
  /** shared by the first and the last unit of a ring only */
  readonly seam: readonly number[];
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** passes asked; a knot counts as one */
  readonly asked: readonly number[];
  /** what an added pass costs per mm: 1 on an under-leg, 3 where it is seen */
  readonly price: readonly number[];
  readonly legClass: readonly number[];
  readonly first: boolean;
  readonly last: boolean;
}

/** A part as a sequence of shapes. */
export interface Layout {
  /** shapes by number, with those of other chains */
  readonly shapes: readonly Shape[];
  readonly shapeOf: Int32Array;
  /** for each shape that occurs, the mean length of each of its legs over all its units, mm */
  readonly lengths: ReadonlyMap<number, Float64Array>;
  /** chain nodes of group g by local number: nodes[nodeStart[g] + local] */
  readonly nodes: readonly number[];
  readonly nodeStart: Int32Array;
}

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
  const nodeStart = new Int32Array(groups + 1);
  const shapeOf = new Int32Array(groups);
  const frontier: number[] = [];
  let unit = blank();
  let previous = blank();
  let recent = -1;
  const finish = (g: number) => {
    if (recent < 0 || !alike(known.shapes[recent], previous)) {
      recent = numberOf(copied(previous), keyOf(previous), known.shapes, known.shapeNumbers);
    }
    shapeOf[g] = recent;
  };
  for (let g = 0; g < groups; g++) {
    const base = nodes.length;
    clear(unit);
    for (let i = part.start[g]; i < part.start[g + 1]; i++) {
      const leg = part.legs[i];
      const a = chain.from[leg];
      const b = chain.to[leg];
      if (stamp[a] !== g) meet(a, g, base, nodes, scratch);
      if (stamp[b] !== g) meet(b, g, base, nodes, scratch);
      unit.from.push(local[a]);
      unit.to.push(local[b]);
      const asked = chain.passes[leg];
      unit.asked.push(chain.kind[leg] === 'knot' && asked > 1 ? 1 : asked);
      unit.price.push(chain.kind[leg] === 'under' ? UNDER : SEEN);
      unit.legClass.push(chain.legClass[leg]);
    }
    for (const node of frontier) if (stamp[node] !== g) meet(node, g, base, nodes, scratch);
    nodeStart[g + 1] = nodes.length;
    if (frontier.length > 1) frontier.sort((a, b) => local[a] - local[b]);
    for (const node of frontier) {
      unit.left.push(local[node]);
      previous.right.push(localBefore[node]);
    }
    if (g > 0) finish(g - 1);
    frontier.length = 0;
    for (let i = base; i < nodes.length; i++) {
      const node = nodes[i];
      if (lastUse[node] <= g) continue;
      frontier.push(node);
      if (g === 0 && atRingSeam(node, groups, scratch)) unit.seam.push(local[node]);
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

const lists = ['left', 'right', 'seam', 'from', 'to', 'asked', 'price', 'legClass'] as const;

/** A shape while it is read; one buffer serves unit after unit. */
type Draft = { -readonly [K in keyof Shape]: Shape[K] extends readonly number[] ? number[] : Shape[K] };

const blank = (): Draft => ({
  nodes: 0,
  left: [],
  right: [],
  seam: [],
  from: [],
  to: [],
  asked: [],
  price: [],
  legClass: [],
  first: false,
  last: false,
});

function clear(draft: Draft): void {
  draft.left.length = 0;
  draft.right.length = 0;
  draft.seam.length = 0;
  draft.from.length = 0;
  draft.to.length = 0;
  draft.asked.length = 0;
  draft.price.length = 0;
  draft.legClass.length = 0;
}

function copied(draft: Draft): Shape {
  const copy: Draft = { ...draft };
  for (const name of lists) copy[name] = [...draft[name]];
  return copy;
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

/** Rounded to a micrometer, so that legs alike but for the noise of arithmetic are alike. */
function lengthsOf(
  part: Part,
  shapeOf: Int32Array,
  legLength: Float64Array,
  { typicalLengths }: Scratch,
): Map<number, Float64Array> {
  if (shapeOf.length > 1) return meanLengths(part, shapeOf, legLength);
  const lengths = typicalLengths.get(shapeOf[0]) ?? meanLengths(part, shapeOf, legLength).get(shapeOf[0])!;
  typicalLengths.set(shapeOf[0], lengths);
  return new Map([[shapeOf[0], lengths]]);
}

function meanLengths(part: Part, shapeOf: Int32Array, legLength: Float64Array): Map<number, Float64Array> {
  const sums = new Map<number, { sum: Float64Array; times: number }>();
  let recent = -1;
  let entry: { sum: Float64Array; times: number } = { sum: new Float64Array(0), times: 0 };
  shapeOf.forEach((id, g) => {
    const first = part.start[g];
    if (id !== recent) {
      entry = sums.get(id) ?? { sum: new Float64Array(part.start[g + 1] - first), times: 0 };
      sums.set(id, entry);
      recent = id;
    }
    entry.times++;
    for (let i = 0; i < entry.sum.length; i++) entry.sum[i] += legLength[part.legs[first + i]];
  });
  const means = new Map<number, Float64Array>();
  for (const [id, { sum, times }] of sums) {
    means.set(
      id,
      sum.map((length) => Math.round((length / times) * 1000) / 1000),
    );
  }
  return means;
}

function alike(a: Shape, b: Shape): boolean {
  return (
    a.nodes === b.nodes &&
    a.first === b.first &&
    a.last === b.last &&
    same(a.from, b.from) &&
    same(a.to, b.to) &&
    same(a.asked, b.asked) &&
    same(a.legClass, b.legClass) &&
    same(a.price, b.price) &&
    same(a.left, b.left) &&
    same(a.right, b.right) &&
    same(a.seam, b.seam)
  );
}

function same(a: readonly number[], b: readonly number[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function keyOf(unit: Shape): string {
  const rest = [unit.nodes, unit.first ? 1 : 0, unit.last ? 1 : 0];
  return [rest, ...lists.map((name) => unit[name])].map((list) => list.join(' ')).join('|');
}
