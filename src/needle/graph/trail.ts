import type { Chain } from '../../fit/fit.js';
import { type Known, numberOf, type Scratch } from './known.js';
import type { Part } from './part.js';
import type { Passes } from './passes.js';
import type { Layout, Shape } from './shape.js';
import { type Walk, type Window, walkThrough } from './stage.js';

/** An Euler trail: legs in the order they are sewn, leg * 2, plus 1 when it is sewn from `to` to `from`. */
export type Trail = Int32Array;

/** What was left of a unit when the next one was reached, and where the needle stands, by local number there. */
interface Entry {
  readonly at: number;
  readonly left: readonly number[];
}

/** The needle's way from the first reach of a unit to the first reach of the next. */
export interface Stage extends Entry {
  /** local leg * 2 + direction; legs of the unit before stand as -1 - that */
  readonly steps: Int32Array;
  readonly cost: number;
  /** stages that may follow, by the kinds of this unit and the next; one map for all stages that leave the needle alike */
  readonly next: Map<number, Stage | null>;
}

/** The units of a part with all that decides how each is walked. */
interface Units {
  readonly layout: Layout;
  readonly passes: Passes;
  readonly crossings: Int32Array;
  /** for each unit, the number of what lies beyond it */
  readonly beyond: Int32Array;
  readonly known: Known;
}

/**
 * A trail over a part that finishes each unit before it reaches the next but one, and lays crossings in the hand's
 * order. Units that are alike, entered alike, share one search. `offense` adds up what breaks that order (see Walk.cost). Null when a
 * stage has no such walk.
 */
export function stagedTrail(
  chain: Chain,
  part: Part,
  layout: Layout,
  passes: Passes,
  crossings: Int32Array,
  known: Known,
  scratch: Scratch,
): { trail: Trail; offense: number } | null {
  const { shapeOf } = layout;
  const units: Units = { layout, passes, crossings, beyond: piecesBeyond(layout, passes, known), known };
  let total = 0;
  for (const pattern of passes.of) for (const count of passes.patterns[pattern]) total += count;
  const trail = new Int32Array(total);
  let end = 0;
  let offense = 0;
  let stage = bestStart(units, startsOf(chain, part, layout, passes, scratch));
  let kind = kindOf(units, 0);
  for (let g = 0; ; g++) {
    if (!stage) return null;
    const own = part.start[g];
    const older = g > 0 ? part.start[g - 1] : 0;
    const { steps } = stage;
    offense += stage.cost;
    for (let i = 0; i < steps.length; i++) {
      const step = steps[i];
      if (step >= 0) trail[end++] = 2 * part.legs[own + (step >> 1)] + (step & 1);
      else trail[end++] = 2 * part.legs[older + ((-1 - step) >> 1)] + ((-1 - step) & 1);
    }
    if (g + 1 === shapeOf.length) break;
    const kindNext = kindOf(units, g + 1);
    const key = kind * 2 ** 24 + kindNext;
    let next = stage.next.get(key);
    if (next === undefined) {
      next = staged(units, g + 1, stage);
      stage.next.set(key, next);
    }
    stage = next;
    kind = kindNext;
  }
  return end === total ? { trail, offense } : null;
}

/** The number of all that decides how unit g is walked, apart from how it is entered. */
function kindOf({ layout, passes, crossings, beyond, known }: Units, g: number): number {
  return known.kinds.of(known.sewnShapes.of(layout.shapeOf[g], passes.of[g], 0), crossings[g], beyond[g]);
}

/** Where the trail may start is open between a few nodes: the one with the best first stage, the hand's first among equals. */
function bestStart(units: Units, starts: readonly number[]): Stage | null {
  const { known } = units;
  const key = `${kindOf(units, 0)},${starts}`;
  let best = known.firstStages.get(key);
  if (best !== undefined) return best;
  best = null;
  for (const at of starts) {
    const stage = staged(units, 0, { at, left: [] });
    if (stage && (!best || stage.cost < best.cost)) best = stage;
    if (best?.cost === 0) break;
  }
  known.firstStages.set(key, best);
  return best;
}

/** Steps of group g, entered at `entry.at`, a local node of the group. What it leaves is at a local node of the next group. */
function staged(
  { layout, passes, crossings: crossingOf, beyond: beyondOf, known }: Units,
  g: number,
  entry: Entry,
): Stage | null {
  const shape = layout.shapes[layout.shapeOf[g]];
  const before = g > 0 ? layout.shapes[layout.shapeOf[g - 1]] : null;
  const sewn = passes.patterns[passes.of[g]];
  const crossings = known.crossings[crossingOf[g]];
  const beyond = known.boundaries[beyondOf[g]];
  const olderLegs: number[] = [];
  entry.left.forEach((count, leg) => {
    if (count > 0) olderLegs.push(leg);
  });
  const ownLegs: number[] = [];
  sewn.forEach((count, leg) => {
    if (count > 0) ownLegs.push(leg);
  });
  const older = olderLegs.length;
  const name = namesOfOlderNodes(shape, before);
  const edgeOf = new Map<number, number>();
  const olderCount = before ? before.from.length : 0;
  for (const [i, leg] of olderLegs.entries()) edgeOf.set(leg - olderCount, i);
  for (const [i, leg] of ownLegs.entries()) edgeOf.set(leg, older + i);
  const pairs: number[] = [];
  for (let i = 0; i < crossings.length; i += 2) {
    const e = edgeOf.get(crossings[i]);
    const f = edgeOf.get(crossings[i + 1]);
    if (e !== undefined && f !== undefined) pairs.push(e, f);
  }
  const nodes = shape.nodes + (before ? before.nodes : 0);
  const pieceOf = new Array<number>(nodes).fill(0);
  const exit = new Array<boolean>(nodes).fill(false);
  shape.right.forEach((node, i) => {
    const code = beyond.charCodeAt(i);
    pieceOf[node] = code >> 1;
    exit[node] = (code & 1) === 1;
  });
  const olderPasses = before ? passes.patterns[passes.of[g - 1]] : new Uint8Array(0);
  const window: Window = {
    nodes,
    from: [...olderLegs.map((leg) => name(before!.from[leg])), ...ownLegs.map((leg) => shape.from[leg])],
    to: [...olderLegs.map((leg) => name(before!.to[leg])), ...ownLegs.map((leg) => shape.to[leg])],
    passes: [...olderLegs.map((leg) => entry.left[leg]), ...ownLegs.map((leg) => sewn[leg])],
    whole: [...olderLegs.map((leg) => olderPasses[leg]), ...ownLegs.map((leg) => sewn[leg])],
    older,
    crossings: pairs,
    beyond: pieceOf,
    exit,
    last: shape.last,
  };
  const walk = walkThrough(window, entry.at);
  if (!walk) return null;
  const stage = asStage(walk, shape, layout, g, olderLegs, ownLegs);
  const key = `${stage.at},${stage.left}`;
  const next = known.following.get(key) ?? new Map<number, Stage | null>();
  known.following.set(key, next);
  return { ...stage, next };
}

function asStage(
  walk: Walk,
  shape: Shape,
  layout: Layout,
  g: number,
  olderLegs: readonly number[],
  ownLegs: readonly number[],
): Omit<Stage, 'next'> {
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
function piecesBeyond(layout: Layout, passes: Passes, known: Known): Int32Array {
  const groups = layout.shapeOf.length;
  const out = new Int32Array(groups);
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
function startsOf(chain: Chain, part: Part, layout: Layout, passes: Passes, { degree }: Scratch): number[] {
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
