import { type Boundary, type Codes, decode, encode } from './boundary.js';
import type { Shape } from './shape.js';

/** One way through a unit: the state it leaves, its cost (priced mm, and what offends the looks), and the passes of each of its legs. */
export interface Transition {
  readonly to: Boundary;
  readonly cost: number;
  readonly passes: Uint8Array;
}

/**
 * Where a trail may begin and end: in the first unit and the last; so, but at the hand's first leg and its last; anywhere;
 * or where it began.
 */
export type Ends = 'through' | 'ordered' | 'anywhere' | 'closed';

/** Whether a trail with such ends begins in the first unit and ends in the last. */
export const goesThrough = (ends: Ends): boolean => ends === 'through' || ends === 'ordered';

/** What a way through a unit is to look like. */
export interface Looks {
  /** whether legs of one class within the unit should get equal passes */
  readonly even: boolean;
  /** the passes each leg should get, where that is to be as in other units; 0 where it does not matter */
  readonly wanted?: ArrayLike<number>;
}

/** A leg that differs from its like is worse than any thread that sews it again. */
const UNLIKE = 1000;

/** Units of a stitch have fewer legs than this, and are solved exactly. */
const MANY_LEGS = 24;
const MOST_STATES = 3000;
/** In a single figure of many legs (a web) only so many of the cheapest states are kept, shared out over its legs. */
const STATES_IN_ALL = 12000;
const LEAST_STATES = 30;

const statesKept = (legs: number): number =>
  legs <= MANY_LEGS ? MOST_STATES : Math.max(LEAST_STATES, Math.floor(STATES_IN_ALL / legs));

interface Step {
  readonly codes: Codes;
  readonly ends: number;
  readonly closed: boolean;
  readonly cost: number;
  readonly back: Step | null;
  readonly passes: number;
  /** for each class of several legs, 1 + the passes added to its legs so far; 0 before the first and after the last */
  readonly marks: readonly number[];
}

/**
 * The cheapest way from one boundary state through a unit to each state it can leave: dynamic programming over the legs,
 * where each gets its passes, one more, or, when it may be left out, none, one or two (out and back).
 */
export function transitions(
  shape: Shape,
  lengths: Float64Array,
  state: Boundary,
  ends: Ends,
  looks: Looks,
): Transition[] {
  const order = workingOrder(shape);
  const forget = forgetting(shape, order);
  const classes = looks.even && shape.from.length <= MANY_LEGS ? sharedClasses(shape) : null;
  const most = statesKept(shape.from.length);
  let steps = opening(shape, state, ends, classes ? classes.count : 0);
  for (const leg of order) {
    const next: Step[] = [];
    for (const step of steps) sew(step, shape, leg, lengths[leg], looks, classes, next);
    steps = cheapest(next, most);
    for (const node of forget[leg]) {
      const rest: Step[] = [];
      for (const step of steps) leaveNode(step, node, shape, ends, rest);
      steps = cheapest(rest, most);
    }
  }
  const best = new Map<Boundary, Step>();
  for (const step of steps) {
    if (goesThrough(ends) && shape.seam.length > 0 && !goesOn(step, shape)) continue;
    const to = encode(
      shape.right.map((node) => step.codes[node]),
      step.ends,
      step.closed,
    );
    const known = best.get(to);
    if (!known || step.cost < known.cost - 1e-9) best.set(to, step);
  }
  return Array.from(best, ([to, step]) => ({ to, cost: step.cost, passes: passesOf(step, order) }));
}

/** On a ring the trail must leave the first unit for the second, not back over the seam: an odd number of times. */
function goesOn(step: Step, shape: Shape): boolean {
  let parity = 0;
  for (const node of shape.seam) parity ^= step.codes[node] & 1;
  return parity === 0;
}

function passesOf(last: Step, order: readonly number[]): Uint8Array {
  const passes = new Uint8Array(order.length);
  let place = passes.length - 1;
  for (let step: Step | null = last; step !== null; step = step.back) {
    if (step.passes >= 0) passes[order[place--]] = step.passes;
  }
  return passes;
}

interface SharedClasses {
  readonly count: number;
  /** for each leg the number of its class, -1 when it is the only one; and whether it is the last of it */
  readonly of: readonly number[];
  readonly closes: readonly boolean[];
}

/** Classes with several legs in the unit that ask for the same visible passes. */
function sharedClasses(shape: Shape): SharedClasses | null {
  const key = shape.legClass.map((cls, leg) => cls * 256 + shape.asked[leg]);
  const seen = shape.from.map((node, leg) => shape.price[leg] > 1 && node !== shape.to[leg]);
  const numbers = new Map<number, number>();
  const of = key.map((name, leg) => {
    if (!seen[leg] || key.indexOf(name) === key.lastIndexOf(name)) return -1;
    if (!numbers.has(name)) numbers.set(name, numbers.size);
    return numbers.get(name)!;
  });
  if (numbers.size === 0) return null;
  return { count: numbers.size, of, closes: key.map((name, leg) => key.lastIndexOf(name) === leg) };
}

function opening(shape: Shape, state: Boundary, ends: Ends, classes: number): Step[] {
  const { codes: shared, ends: placed, closed } = decode(state);
  const codes: Codes = new Array(shape.nodes).fill(0);
  shape.left.forEach((node, i) => {
    codes[node] = shared[i];
  });
  const marks = new Array<number>(classes).fill(0);
  const plain: Step = { codes, ends: placed, closed, cost: 0, back: null, passes: -1, marks };
  if (!goesThrough(ends) || !shape.first) return [plain];
  const starts = ends === 'ordered' ? [...new Set([shape.from[0], shape.to[0]])] : [...codes.keys()];
  return starts.map((node) => ({ ...plain, codes: codes.with(node, codes[node] ^ 1), ends: 1 }));
}

function sew(
  step: Step,
  shape: Shape,
  leg: number,
  length: number,
  looks: Looks,
  classes: SharedClasses | null,
  out: Step[],
): void {
  const asked = shape.asked[leg];
  const a = shape.from[leg];
  const b = shape.to[leg];
  const most = a === b ? asked : asked > 0 ? asked + 1 : 2;
  const wanted = looks.wanted?.[leg] ?? 0;
  const cls = classes ? classes.of[leg] : -1;
  for (let passes = asked; passes <= most; passes++) {
    if (passes > 0 && step.closed) break;
    const codes = passes > 0 ? joined(step.codes, a, b, passes) : step.codes;
    let cost = step.cost + (passes - asked) * length * shape.price[leg];
    if (wanted > 0 && passes !== wanted) cost += UNLIKE;
    let { marks } = step;
    if (cls >= 0) {
      const mark = passes - asked + 1;
      if (marks[cls] > 0 && marks[cls] !== mark) cost += UNLIKE;
      marks = marks.with(cls, classes!.closes[leg] ? 0 : mark);
    }
    out.push({ codes, ends: step.ends, closed: step.closed, cost, back: step, passes, marks });
  }
}

function joined(codes: Codes, a: number, b: number, passes: number): Codes {
  let fresh = 0;
  for (const code of codes) if (code >> 1 > fresh) fresh = code >> 1;
  const pieceA = codes[a] >> 1;
  const pieceB = codes[b] >> 1;
  const piece = pieceA || pieceB || fresh + 1;
  const next = codes.map((code) => {
    const own = code >> 1;
    return own > 0 && (own === pieceA || own === pieceB) ? (piece << 1) | (code & 1) : code;
  });
  next[a] = (piece << 1) | (next[a] & 1);
  next[b] = (piece << 1) | (next[b] & 1);
  if (a !== b && passes & 1) {
    next[a] ^= 1;
    next[b] ^= 1;
  }
  return next;
}

/** No later leg touches the node: its degree must be even now, but for an end of the trail. */
function leaveNode(step: Step, node: number, shape: Shape, ends: Ends, out: Step[]): void {
  const piece = step.codes[node] >> 1;
  let { closed } = step;
  if (piece > 0) {
    let alone = true;
    let others = false;
    for (let i = 0; i < step.codes.length; i++) {
      if (i === node || step.codes[i] < 2) continue;
      if (step.codes[i] >> 1 === piece) alone = false;
      else others = true;
    }
    if (alone && others) return;
    if (alone) closed = true;
  }
  // going through, both ends on one node toggle it twice: a closed trail starts on a node that looks odd until its end
  const odd = (step.codes[node] & 1) === 1;
  const mayEnd = goesThrough(ends)
    ? shape.last && step.ends === 1 && (ends === 'through' || atLastLeg(node, shape))
    : ends === 'anywhere' && step.ends < 2;
  if (odd && !mayEnd) return;
  const codes = step.codes.with(node, 0);
  out.push({ ...step, codes, closed, back: step, passes: -1, ends: step.ends + (odd ? 1 : 0) });
}

function atLastLeg(node: number, shape: Shape): boolean {
  const leg = shape.asked.findLastIndex((count) => count > 0);
  return shape.from[leg] === node || shape.to[leg] === node;
}

function cheapest(steps: Step[], most: number): Step[] {
  const best = new Map<string, Step>();
  for (const step of steps) {
    const key = encode(step.codes, step.ends, step.closed, step.marks);
    const known = best.get(key);
    if (!known || step.cost < known.cost - 1e-9) best.set(key, step);
  }
  const kept = [...best.values()];
  return kept.length <= most ? kept : kept.sort((a, b) => a.cost - b.cost).slice(0, most);
}

/** The order in which legs are decided: the hand's; in a figure of many legs outward from its first point, so that few points stay open. */
function workingOrder(shape: Shape): number[] {
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
function forgetting(shape: Shape, order: readonly number[]): number[][] {
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
