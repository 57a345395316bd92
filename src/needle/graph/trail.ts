import type { Chain } from '../../fit/fit.js';
import type { Part } from './part.js';
import type { Passes } from './passes.js';
import type { Layout, Shape } from './shape.js';
import { type Walk, type Window, walkThrough } from './stage.js';

/** An Euler trail: legs in the order they are sewn, leg * 2, plus 1 when it is sewn from `to` to `from`. */
export type Trail = Int32Array;

/** What was left of a unit when the next one was reached, and where the needle stood. */
interface Entry {
  readonly at: number;
  readonly left: readonly number[];
}

/** A stage as it is reused: local leg * 2 + direction; legs of the unit before are stored as -1 - that. */
interface Stage {
  readonly steps: Int32Array;
  readonly at: number;
  readonly left: readonly number[];
  readonly cost: number;
}

/**
 * A trail over a part that finishes each unit before it reaches the next but one, and lays crossings in the hand's
 * order. Units that are alike, entered alike, share one search. Null when a stage has no such walk.
 */
export function stagedTrail(
  chain: Chain,
  part: Part,
  layout: Layout,
  passes: Passes,
  crossings: readonly Int32Array[],
): Trail | null {
  const groups = layout.shapeOf.length;
  const beyond = piecesBeyond(layout, passes);
  const patternOf = numbered(passes.of);
  const crossingOf = numbered(crossings, (pairs) => pairs.join());
  const known = new Map<string, Stage | null>();
  let total = 0;
  for (const of of passes.of) for (const p of of) total += p;
  const trail = new Int32Array(total);
  let end = 0;
  const started = bestStart(layout, passes, crossings, beyond);
  if (!started) return null;
  let entry: Entry = started;
  for (let g = 0; g < groups; g++) {
    let stage: Stage | null | undefined = started;
    if (g > 0) {
      const shape = layout.shapeOf[g];
      const before = layout.shapeOf[g - 1];
      const key = `${shape},${patternOf[g]},${crossingOf[g]},${before},${patternOf[g - 1]},${beyond[g]},${entry.at},${entry.left}`;
      stage = known.get(key);
      if (stage === undefined) {
        stage = staged(layout, passes, crossings, beyond, g, entry);
        known.set(key, stage);
      }
    }
    if (!stage) return null;
    const own = part.start[g];
    const older = g > 0 ? part.start[g - 1] : 0;
    for (let i = 0; i < stage.steps.length; i++) {
      const step = stage.steps[i];
      if (step >= 0) trail[end++] = 2 * part.legs[own + (step >> 1)] + (step & 1);
      else trail[end++] = 2 * part.legs[older + ((-1 - step) >> 1)] + ((-1 - step) & 1);
    }
    entry = stage;
  }
  return end === total ? trail : null;
}

/** Where the trail may start is open between a few nodes: the one with the best first stage, the hand's first among equals. */
function bestStart(
  layout: Layout,
  passes: Passes,
  crossings: readonly Int32Array[],
  beyond: readonly string[],
): Stage | null {
  let best: Stage | null = null;
  for (const at of startsOf(layout, passes)) {
    const stage = staged(layout, passes, crossings, beyond, 0, { at, left: [] });
    if (stage && (!best || stage.cost < best.cost)) best = stage;
    if (best?.cost === 0) break;
  }
  return best;
}

/** Steps of group g, entered at `entry.at`, a local node of the group. What it leaves is at a local node of the next group. */
function staged(
  layout: Layout,
  passes: Passes,
  crossings: readonly Int32Array[],
  beyond: readonly string[],
  g: number,
  entry: Entry,
): Stage | null {
  const shape = layout.shapes[layout.shapeOf[g]];
  const before = g > 0 ? layout.shapes[layout.shapeOf[g - 1]] : null;
  const olderLegs: number[] = [];
  entry.left.forEach((count, leg) => {
    if (count > 0) olderLegs.push(leg);
  });
  const ownLegs: number[] = [];
  passes.of[g].forEach((count, leg) => {
    if (count > 0) ownLegs.push(leg);
  });
  const older = olderLegs.length;
  const name = namesOfOlderNodes(shape, before);
  const edgeOf = new Map<number, number>();
  const olderCount = before ? before.from.length : 0;
  olderLegs.forEach((leg, i) => edgeOf.set(leg - olderCount, i));
  ownLegs.forEach((leg, i) => edgeOf.set(leg, older + i));
  const pairs: number[] = [];
  for (let i = 0; i < crossings[g].length; i += 2) {
    const e = edgeOf.get(crossings[g][i]);
    const f = edgeOf.get(crossings[g][i + 1]);
    if (e !== undefined && f !== undefined) pairs.push(e, f);
  }
  const nodes = shape.nodes + (before ? before.nodes : 0);
  const pieceOf = new Array<number>(nodes).fill(0);
  const exit = new Array<boolean>(nodes).fill(false);
  shape.right.forEach((node, i) => {
    const code = beyond[g].charCodeAt(i);
    pieceOf[node] = code >> 1;
    exit[node] = (code & 1) === 1;
  });
  const olderPasses = before ? passes.of[g - 1] : new Uint8Array(0);
  const window: Window = {
    nodes,
    from: [...olderLegs.map((leg) => name(before!.from[leg])), ...ownLegs.map((leg) => shape.from[leg])],
    to: [...olderLegs.map((leg) => name(before!.to[leg])), ...ownLegs.map((leg) => shape.to[leg])],
    passes: [...olderLegs.map((leg) => entry.left[leg]), ...ownLegs.map((leg) => passes.of[g][leg])],
    whole: [...olderLegs.map((leg) => olderPasses[leg]), ...ownLegs.map((leg) => passes.of[g][leg])],
    older,
    crossings: pairs,
    beyond: pieceOf,
    exit,
    last: shape.last,
  };
  const walk = walkThrough(window, entry.at);
  return walk && asStage(walk, shape, layout, g, olderLegs, ownLegs);
}

function asStage(
  walk: Walk,
  shape: Shape,
  layout: Layout,
  g: number,
  olderLegs: readonly number[],
  ownLegs: readonly number[],
): Stage {
  const older = olderLegs.length;
  const steps = Int32Array.from(walk.steps, (step) => {
    const edge = step >> 1;
    return edge < older ? -1 - (2 * olderLegs[edge] + (step & 1)) : 2 * ownLegs[edge - older] + (step & 1);
  });
  const left = new Array<number>(shape.from.length).fill(0);
  ownLegs.forEach((leg, i) => {
    left[leg] = walk.left[older + i];
  });
  const next = shape.last ? null : layout.shapes[layout.shapeOf[g + 1]];
  const at = next ? next.left[shape.right.indexOf(walk.at)] : walk.at;
  return { steps, at, left, cost: walk.cost };
}

/** Local numbers, in this unit, of the nodes of the unit before; those not shared come after this unit's own. */
function namesOfOlderNodes(shape: Shape, before: Shape | null): (node: number) => number {
  if (!before) return (node) => node;
  const name = Array.from({ length: before.nodes }, (_, node) => shape.nodes + node);
  before.right.forEach((node, i) => {
    name[node] = shape.left[i];
  });
  return (node) => name[node];
}

/**
 * For each group, how the nodes it shares with later groups hang together there: for each, bit 0 says whether the very
 * next group sews a leg at it, above it the number of its piece in all that lies beyond.
 */
function piecesBeyond(layout: Layout, passes: Passes): string[] {
  const groups = layout.shapeOf.length;
  const out = new Array<string>(groups).fill('');
  const patternOf = numbered(passes.of);
  const known = new Map<string, string>();
  for (let g = groups - 2; g >= 0; g--) {
    const key = `${layout.shapeOf[g + 1]},${patternOf[g + 1]},${out[g + 1]}`;
    let text = known.get(key);
    if (text === undefined) {
      text = piecesOf(layout.shapes[layout.shapeOf[g + 1]], passes.of[g + 1], out[g + 1]);
      known.set(key, text);
    }
    out[g] = text;
  }
  return out;
}

function piecesOf(shape: Shape, passes: Uint8Array, further: string): string {
  const parent = Array.from({ length: shape.nodes }, (_, i) => i);
  const find = (node: number): number => {
    let n = node;
    while (parent[n] !== n) n = parent[n];
    return n;
  };
  const near = new Array<boolean>(shape.nodes).fill(false);
  const sewn = new Array<boolean>(shape.nodes).fill(false);
  passes.forEach((count, leg) => {
    if (count === 0) return;
    for (const node of [shape.from[leg], shape.to[leg]]) {
      near[node] = true;
      sewn[node] = true;
    }
    parent[find(shape.to[leg])] = find(shape.from[leg]);
  });
  const first: number[] = [];
  shape.right.forEach((node, i) => {
    const piece = further.charCodeAt(i) >> 1;
    if (piece === 0) return;
    sewn[node] = true;
    if (first[piece] === undefined) first[piece] = node;
    else parent[find(node)] = find(first[piece]);
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

/** Local nodes of the first group where the trail may start: its odd nodes, or all that are sewn when it closes. */
function startsOf(layout: Layout, passes: Passes): number[] {
  const degree = new Map<number, number>();
  for (let g = 0; g < layout.shapeOf.length; g++) {
    const shape = layout.shapes[layout.shapeOf[g]];
    const base = layout.nodeStart[g];
    passes.of[g].forEach((count, leg) => {
      if (count === 0 || shape.from[leg] === shape.to[leg]) return;
      for (const local of [shape.from[leg], shape.to[leg]]) {
        const node = layout.nodes[base + local];
        degree.set(node, (degree.get(node) ?? 0) + count);
      }
    });
  }
  const shape = layout.shapes[layout.shapeOf[0]];
  const later = new Set(shape.right);
  const sewn = new Set<number>();
  passes.of[0].forEach((count, leg) => {
    if (count > 0) sewn.add(shape.from[leg]).add(shape.to[leg]);
  });
  const odd = [...sewn].filter((local) => (degree.get(layout.nodes[local]) ?? 0) & 1);
  if (odd.length === 0) return [...sewn];
  const own = odd.filter((local) => !later.has(local));
  return own.length > 0 ? own : odd;
}

/** Equal arrays get equal numbers, in order of appearance. */
function numbered<T extends Uint8Array | Int32Array>(
  list: readonly T[],
  text: (item: T) => string = (item) => String.fromCharCode(...item),
): Int32Array {
  const byItem = new Map<T, number>();
  const byText = new Map<string, number>();
  return Int32Array.from(list, (item) => {
    let number = byItem.get(item);
    if (number === undefined) {
      const key = text(item);
      number = byText.get(key) ?? byText.size;
      byText.set(key, number);
      byItem.set(item, number);
    }
    return number;
  });
}
