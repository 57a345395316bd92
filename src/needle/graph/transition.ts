import { type Boundary, type Codes, decode, encode } from './boundary.js';
import type { Shape } from './shape.js';

/** One way through a unit: the state it leaves, what it adds (priced mm), and the passes of each of its legs. */
export interface Transition {
  readonly to: Boundary;
  readonly cost: number;
  readonly passes: Uint8Array;
}

/** Where a trail may begin and end: `through` from the first unit to the last, `anywhere`, or at named local nodes. */
export type Ends = 'through' | 'anywhere';

/**
 * Units have a few dozen states at most; a single figure of many legs (a web) may have more, and then only so many of
 * the cheapest are kept.
 */
const MOST_STATES = 6000;

interface Step {
  readonly codes: Codes;
  readonly ends: number;
  readonly closed: boolean;
  readonly cost: number;
  readonly back: Step | null;
  readonly passes: number;
}

/**
 * The cheapest way from one boundary state through a unit to each state it can leave: dynamic programming over the legs,
 * where each gets its passes, one more, or, when it may be left out, none, one or two (out and back). `start`, if given, is the one
 * local node where a trail that begins in this unit begins.
 */
export function transitions(
  shape: Shape,
  lengths: Float64Array,
  state: Boundary,
  ends: Ends,
  start?: number,
): Transition[] {
  const forget = forgetting(shape);
  let steps = opening(shape, state, ends, start);
  for (let leg = 0; leg < shape.from.length; leg++) {
    steps = cheapest(steps.flatMap((step) => sewn(step, shape, leg, lengths[leg])));
    for (const node of forget[leg]) {
      steps = cheapest(steps.flatMap((step) => forgotten(step, node, shape, ends)));
    }
  }
  return steps.map((step) => {
    const passes = new Uint8Array(shape.from.length);
    let at: Step | null = step;
    for (let leg = passes.length - 1; at !== null; at = at.back) {
      if (at.passes >= 0) passes[leg--] = at.passes;
    }
    const codes = shape.right.map((node) => step.codes[node]);
    return { to: encode(codes, step.ends, step.closed), cost: step.cost, passes };
  });
}

function opening(shape: Shape, state: Boundary, ends: Ends, start?: number): Step[] {
  const { codes: shared, ends: placed, closed } = decode(state);
  const codes: Codes = new Array(shape.nodes).fill(0);
  shape.left.forEach((node, i) => {
    codes[node] = shared[i];
  });
  const plain: Step = { codes, ends: placed, closed, cost: 0, back: null, passes: -1 };
  if (ends !== 'through' || !shape.first) return [plain];
  const candidates = start === undefined ? Array.from(codes.keys()) : [start];
  return candidates.map((node) => ({ ...plain, codes: codes.with(node, codes[node] ^ 1), ends: 1 }));
}

function sewn(step: Step, shape: Shape, leg: number, length: number): Step[] {
  const asked = shape.asked[leg];
  const a = shape.from[leg];
  const b = shape.to[leg];
  const out: Step[] = [];
  const most = a === b ? asked : asked > 0 ? asked + 1 : 2;
  for (let passes = asked; passes <= most; passes++) {
    if (passes > 0 && step.closed) break;
    const codes = passes > 0 ? joined(step.codes, a, b, passes) : step.codes;
    const cost = step.cost + (passes - asked) * length * shape.price[leg];
    out.push({ codes, ends: step.ends, closed: step.closed, cost, back: step, passes });
  }
  return out;
}

function joined(codes: Codes, a: number, b: number, passes: number): Codes {
  const fresh = Math.max(...codes) >> 1;
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
function forgotten(step: Step, node: number, shape: Shape, ends: Ends): Step[] {
  const out: Step[] = [];
  const piece = step.codes[node] >> 1;
  let { closed } = step;
  if (piece > 0) {
    let alone = true;
    let others = false;
    step.codes.forEach((code, i) => {
      if (i === node) return;
      if (code >> 1 === piece) alone = false;
      else if (code >> 1 > 0) others = true;
    });
    if (alone && others) return out;
    if (alone) closed = true;
  }
  const odd = (step.codes[node] & 1) === 1;
  const codes = step.codes.with(node, 0);
  const even = { codes, closed, cost: step.cost, back: step, passes: -1 };
  if (!odd) out.push({ ...even, ends: step.ends });
  if (ends === 'through') {
    if (shape.last && odd && step.ends === 1) out.push({ ...even, ends: 2 });
  } else if (odd && step.ends < 2) out.push({ ...even, ends: step.ends + 1 });
  return out;
}

/** A start placed on an even node is an odd node that its own end cancels: a closed trail, both ends on one node. */
function cheapest(steps: Step[]): Step[] {
  const best = new Map<string, Step>();
  for (const step of steps) {
    const key = encode(step.codes, step.ends, step.closed);
    const known = best.get(key);
    if (!known || step.cost < known.cost - 1e-9) best.set(key, step);
  }
  const kept = [...best.values()];
  return kept.length <= MOST_STATES ? kept : kept.sort((a, b) => a.cost - b.cost).slice(0, MOST_STATES);
}

/** The nodes that no leg after a given one touches, here or later. */
function forgetting(shape: Shape): number[][] {
  const out: number[][] = Array.from(shape.from, () => []);
  const last = new Int32Array(shape.nodes).fill(-1);
  shape.from.forEach((node, leg) => {
    last[node] = leg;
    last[shape.to[leg]] = leg;
  });
  const kept = new Set(shape.right);
  last.forEach((leg, node) => {
    if (leg >= 0 && !kept.has(node)) out[leg].push(node);
  });
  return out;
}
