import type { Known } from './known.js';
import type { Passes } from './passes.js';
import type { Layout, Shape } from './shape.js';
import { type Walk, type Window, walkThrough } from './stage.js';

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
export interface Units {
  readonly layout: Layout;
  readonly passes: Passes;
  readonly crossings: Int32Array;
  /** for each unit, the number of what lies beyond it */
  readonly beyond: Int32Array;
  readonly known: Known;
}

/** Steps of group g, entered at `entry.at`, a local node of the group. What it leaves is at a local node of the next group. */
export function staged(
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
