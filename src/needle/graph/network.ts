import { type Boundary, type Codes, decode, encode } from './boundary.js';
import { type Ends, goesThrough } from './ends.js';
import { forgetting, MANY_LEGS, workingOrder } from './leg-order.js';
import { type SharedClasses, sharedClasses } from './like-legs.js';
import type { Shape } from './shape.js';

/**
 * Every way through a unit from one boundary state, whatever its legs' lengths: what can be told of the legs decided so
 * far is a state, and steps lead from state to state. It is searched once for each shape of unit.
 */
export interface Network {
  readonly states: number;
  readonly steps: Steps;
  /** boundary states that the unit can leave; they are the last of the states, in this order */
  readonly leaves: readonly Boundary[];
  /** whether dear states were left out, which depends on the lengths it was made with */
  readonly pruned: boolean;
}

/** Steps in an order in which they can be taken, from state 0 on. */
export interface Steps {
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** the leg that gets `passes`; -1 where a step decides none */
  readonly leg: Int16Array;
  readonly passes: Uint8Array;
  /** cost for each mm of the leg, and what offends the looks */
  readonly perMm: Float64Array;
  readonly penalty: Float64Array;
}

/** What a way through a unit is to look like. */
export interface Looks {
  /** whether legs of one class within the unit should get equal passes */
  readonly even: boolean;
  /** the passes each leg should get, where that is to be as in other units; 0 where it does not matter */
  readonly wanted?: ArrayLike<number>;
}

/** A leg that differs from its like is worse than any thread that sews it again. */
const UNLIKE = 1000;

const MOST_STATES = 3000;
/** In a single figure of many legs (a web) only so many of the cheapest states are kept, shared out over its legs. */
const STATES_IN_ALL = 12000;
const LEAST_STATES = 30;

const statesKept = (legs: number): number =>
  legs <= MANY_LEGS ? MOST_STATES : Math.max(LEAST_STATES, Math.floor(STATES_IN_ALL / legs));

/** What is known of a trail when some legs of a unit are decided. */
interface State {
  readonly codes: Codes;
  readonly ends: number;
  readonly closed: boolean;
  /** for each class of several legs, 1 + the passes added to its legs so far; 0 before the first and after the last */
  readonly marks: readonly number[];
}

/** A state with its number and the least cost of reaching it. */
interface Place extends State {
  readonly number: number;
  cost: number;
}

/**
 * Searches the ways through a unit, leg by leg: each gets its passes, one more, or, when it may be left out, none, one or
 * two (out and back). Lengths only tell which states to leave out where there are too many.
 */
export function networkOf(
  shape: Shape,
  lengths: Float64Array,
  state: Boundary,
  ends: Ends,
  looks: Looks,
): Network {
  const order = workingOrder(shape);
  const forget = forgetting(shape, order);
  const classes = looks.even && shape.from.length <= MANY_LEGS ? sharedClasses(shape) : null;
  const most = statesKept(shape.from.length);
  const steps = new StepList();
  let states = 1;
  let pruned = false;
  // of ways that cost the same the first found stays
  const layer = (places: readonly Place[], go: (place: Place, out: Reach) => void): Place[] => {
    const found = new Map<string, Place>();
    for (const place of places) {
      go(place, (to, leg, passes, penalty) => {
        const key = encode(to.codes, to.ends, to.closed, to.marks);
        const perMm = leg < 0 ? 0 : (passes - shape.asked[leg]) * shape.price[leg];
        const cost = place.cost + (perMm && perMm * lengths[leg]) + penalty;
        let next = found.get(key);
        if (!next) {
          const { codes, ends, closed, marks } = to;
          next = { codes, ends, closed, marks, number: states++, cost };
          found.set(key, next);
        } else if (cost < next.cost) next.cost = cost;
        steps.add(place.number, next.number, leg, passes, perMm, penalty);
      });
    }
    const kept = [...found.values()];
    if (kept.length <= most) return kept;
    pruned = true;
    return kept.sort((a, b) => a.cost - b.cost).slice(0, most);
  };
  const entered: Place = { ...entering(shape, state, classes ? classes.count : 0), number: 0, cost: 0 };
  let places = layer([entered], (place, out) => {
    for (const to of openings(place, shape, ends)) out(to, -1, 0, 0);
  });
  for (const leg of order) {
    places = layer(places, (place, out) =>
      sew(place, shape, leg, looks, classes, (sewn, passes, penalty) => {
        const to = leaveNodes(sewn, forget[leg], shape, ends);
        if (to) out(to, leg, passes, penalty);
      }),
    );
  }
  const leaves = new Map<Boundary, number>();
  for (const place of places) {
    if (goesThrough(ends) && shape.seam.length > 0 && !goesOn(place, shape)) continue;
    const codes = shape.right.map((node) => place.codes[node]);
    const to = encode(codes, place.ends, place.closed);
    if (!leaves.has(to)) leaves.set(to, states++);
    steps.add(place.number, leaves.get(to)!, -1, 0, 0, 0);
  }
  return { states, steps: steps.packed(), leaves: [...leaves.keys()], pruned };
}

class StepList {
  private readonly from: number[] = [];
  private readonly to: number[] = [];
  private readonly leg: number[] = [];
  private readonly passes: number[] = [];
  private readonly perMm: number[] = [];
  private readonly penalty: number[] = [];

  add(from: number, to: number, leg: number, passes: number, perMm: number, penalty: number): void {
    this.from.push(from);
    this.to.push(to);
    this.leg.push(leg);
    this.passes.push(passes);
    this.perMm.push(perMm);
    this.penalty.push(penalty);
  }

  packed(): Steps {
    return {
      from: new Int32Array(this.from),
      to: new Int32Array(this.to),
      leg: new Int16Array(this.leg),
      passes: new Uint8Array(this.passes),
      perMm: new Float64Array(this.perMm),
      penalty: new Float64Array(this.penalty),
    };
  }
}

/** Takes up a state that a step leads to; the leg is -1 where the step decides none. */
type Reach = (to: State, leg: number, passes: number, penalty: number) => void;

/** On a ring the trail must leave the first unit for the second, not back over the seam: an odd number of times. */
function goesOn(state: State, shape: Shape): boolean {
  let parity = 0;
  for (const node of shape.seam) parity ^= state.codes[node] & 1;
  return parity === 0;
}

function entering(shape: Shape, state: Boundary, classes: number): State {
  const { codes: shared, ends, closed } = decode(state);
  const codes: Codes = new Array(shape.nodes).fill(0);
  shape.left.forEach((node, i) => {
    codes[node] = shared[i];
  });
  return { codes, ends, closed, marks: new Array<number>(classes).fill(0) };
}

/** Where the trail may start, when it starts in this unit. */
function openings(state: State, shape: Shape, ends: Ends): State[] {
  if (!goesThrough(ends) || !shape.first) return [state];
  const starts = ends === 'ordered' ? [...new Set([shape.from[0], shape.to[0]])] : [...state.codes.keys()];
  return starts.map((node) => ({ ...state, codes: state.codes.with(node, state.codes[node] ^ 1), ends: 1 }));
}

function sew(
  state: State,
  shape: Shape,
  leg: number,
  looks: Looks,
  classes: SharedClasses | null,
  out: (to: State, passes: number, penalty: number) => void,
): void {
  const asked = shape.asked[leg];
  const a = shape.from[leg];
  const b = shape.to[leg];
  const most = a === b ? asked : asked > 0 ? asked + 1 : 2;
  const wanted = looks.wanted?.[leg] ?? 0;
  const cls = classes ? classes.of[leg] : -1;
  for (let passes = asked; passes <= most; passes++) {
    if (passes > 0 && state.closed) break;
    const codes = passes > 0 ? joined(state.codes, a, b, passes) : state.codes;
    let penalty = wanted > 0 && passes !== wanted ? UNLIKE : 0;
    let { marks } = state;
    if (cls >= 0) {
      const mark = passes - asked + 1;
      if (marks[cls] > 0 && marks[cls] !== mark) penalty += UNLIKE;
      marks = marks.with(cls, classes!.closes[leg] ? 0 : mark);
    }
    out({ codes, ends: state.ends, closed: state.closed, marks }, passes, penalty);
  }
}

function joined(codes: Codes, a: number, b: number, passes: number): Codes {
  let fresh = 0;
  for (let i = 0; i < codes.length; i++) if (codes[i] >> 1 > fresh) fresh = codes[i] >> 1;
  const pieceA = codes[a] >> 1;
  const pieceB = codes[b] >> 1;
  const piece = pieceA || pieceB || fresh + 1;
  const next = codes.slice();
  for (let i = 0; i < next.length; i++) {
    const own = next[i] >> 1;
    if (own > 0 && (own === pieceA || own === pieceB)) next[i] = (piece << 1) | (next[i] & 1);
  }
  next[a] = (piece << 1) | (next[a] & 1);
  next[b] = (piece << 1) | (next[b] & 1);
  if (a !== b && passes & 1) {
    next[a] ^= 1;
    next[b] ^= 1;
  }
  return next;
}

/** The state without nodes that no later leg touches; null where one of them cannot be left so. */
function leaveNodes(state: State, nodes: readonly number[], shape: Shape, ends: Ends): State | null {
  let left: State | null = state;
  for (let i = 0; i < nodes.length && left; i++) left = leaveNode(left, nodes[i], shape, ends);
  return left;
}

/** No later leg touches the node: its degree must be even now, but for an end of the trail. Null when it cannot be left so. */
function leaveNode(state: State, node: number, shape: Shape, ends: Ends): State | null {
  const piece = state.codes[node] >> 1;
  let { closed } = state;
  if (piece > 0) {
    let alone = true;
    let others = false;
    for (let i = 0; i < state.codes.length; i++) {
      if (i === node || state.codes[i] < 2) continue;
      if (state.codes[i] >> 1 === piece) alone = false;
      else others = true;
    }
    if (alone && others) return null;
    if (alone) closed = true;
  }
  // going through, both ends on one node toggle it twice: a closed trail starts on a node that looks odd until its end
  const odd = (state.codes[node] & 1) === 1;
  const mayEnd = goesThrough(ends)
    ? shape.last && state.ends === 1 && (ends === 'through' || atLastLeg(node, shape))
    : ends === 'anywhere' && state.ends < 2;
  if (odd && !mayEnd) return null;
  return { codes: state.codes.with(node, 0), ends: state.ends + (odd ? 1 : 0), closed, marks: state.marks };
}

function atLastLeg(node: number, shape: Shape): boolean {
  const leg = shape.asked.findLastIndex((count) => count > 0);
  return shape.from[leg] === node || shape.to[leg] === node;
}
