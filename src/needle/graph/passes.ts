import { type Boundary, endsPlaced, START } from './boundary.js';
import { type Ends, goesThrough } from './ends.js';
import { type Known, numberOf } from './known.js';
import type { Layout, Shape } from './shape.js';
import type { Transition } from './transition.js';
import { type Ways, waysThrough } from './ways.js';

/** Passes for each leg of a part, group by group, such that one trail can sew them all. */
export interface Passes {
  /** for each group, the number in `patterns` of its legs' passes */
  readonly of: Int32Array;
  /** passes of a unit's legs by number, with those of other chains */
  readonly patterns: readonly Uint8Array[];
  /** what they add to the passes asked: mm priced 1 on under-legs, 3 where it is seen */
  readonly cost: number;
}

/** A way that is not the same in every repeat is worse than any thread. */
const UNEVEN = 1e6;

interface Way {
  readonly state: Boundary;
  readonly cost: number;
  readonly back: Way | null;
  /** how many groups got `step.passes` */
  readonly count: number;
  readonly step: Transition | null;
}

/**
 * The least added cost of one trail over a part: a least T-join over the points where the passes asked add up to an odd
 * number, together with the under-legs needed to connect (Kwan 1960 for the closed walk). Exact, by dynamic programming
 * over the units with the parity and connection of the shared nodes as state; linear in the number of units.
 *
 * With `even`, repeats of one shape that follow each other get equal passes wherever a trail allows that, even when it
 * costs thread, and the units at the ends follow them as far as they can. Returns null when no such trail exists.
 */
export function leastPasses(layout: Layout, ends: Ends, even: boolean, known: Known): Passes | null {
  const first = solve(layout, ends, even, known, () => undefined);
  if (!first || !even) return first;
  const model = commonest(layout, first);
  const differs = (id: number, of: Uint8Array) =>
    wantedAs(layout.shapes[id], model).some((passes, leg) => passes > 0 && passes !== of[leg]);
  const settled = layout.shapeOf.every((id, g) => !differs(id, first.patterns[first.of[g]]));
  if (settled) return first;
  return solve(layout, ends, even, known, (id) => wantedAs(layout.shapes[id], model)) ?? first;
}

/** A trail has two ends or, closed, none. */
function isFinal(state: Boundary, ends: Ends): boolean {
  return goesThrough(ends) ? endsPlaced(state) === 2 : endsPlaced(state) !== 1;
}

interface Model {
  readonly shape: Shape;
  readonly passes: Uint8Array;
}

/** The passes that most repeats have, the ends left out where there are others. */
function commonest(layout: Layout, passes: Passes): Model {
  const counts = new Map<number, number>();
  const inner = passes.of.length > 2 ? 1 : 0;
  let best = inner;
  let most = 0;
  for (let g = inner; g < passes.of.length - inner; g++) {
    const key = layout.shapeOf[g] * 2 ** 20 + passes.of[g];
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    if (count > most) {
      most = count;
      best = g;
    }
  }
  return { shape: layout.shapes[layout.shapeOf[best]], passes: passes.patterns[passes.of[best]] };
}

/** For each visible leg of a unit the passes that its like has in the model, 0 when there is none. */
function wantedAs(shape: Shape, model: Model): number[] {
  const taken = new Map<number, number>();
  return shape.legClass.map((cls, leg) => {
    if (shape.price[leg] === 1) return 0;
    const from = taken.get(cls) ?? -1;
    const like = model.shape.legClass.indexOf(cls, from + 1);
    if (like < 0) return 0;
    taken.set(cls, like);
    return model.shape.asked[like] === shape.asked[leg] ? model.passes[like] : 0;
  });
}

function solve(
  layout: Layout,
  ends: Ends,
  even: boolean,
  known: Known,
  wanted: (shape: number) => number[] | undefined,
): Passes | null {
  const ways = waysThrough(layout, ends, known, (shape) => ({ even, wanted: wanted(shape) }));
  let now = new Map<Boundary, Way>([[START, { state: START, cost: 0, back: null, count: 0, step: null }]]);
  for (const [shape, count] of repeated(layout.shapeOf)) {
    if (even && count > 1) now = evenly(now, shape, count, ways);
    else for (let i = 0; i < count; i++) now = onward(now, shape, ways);
  }
  let best: Way | null = null;
  for (const way of now.values()) {
    if (isFinal(way.state, ends) && (!best || way.cost < best.cost - 1e-9)) best = way;
  }
  return best && unwound(best, layout, known);
}

/** The least added cost alone, for the account of what evenness and order cost: no memory of the way. */
export function leastCost(layout: Layout, ends: Ends, known: Known): number {
  const ways = waysThrough(layout, ends, known, () => ({ even: false }));
  let now = new Map<Boundary, number>([[START, 0]]);
  for (const [shape, count] of repeated(layout.shapeOf)) now = costsAfter(now, shape, count, ways);
  let best = Number.POSITIVE_INFINITY;
  for (const [state, cost] of now) if (isFinal(state, ends)) best = Math.min(best, cost);
  return best;
}

/** Least cost of each state after `count` units of one shape: states are numbered once, then it is arithmetic. */
function costsAfter(
  now: ReadonlyMap<Boundary, number>,
  shape: number,
  count: number,
  ways: Ways,
): Map<Boundary, number> {
  const states = [...now.keys()];
  const number = new Map(states.map((state, i) => [state, i]));
  const arcs: number[] = [];
  const prices: number[] = [];
  // the list grows while it is walked
  for (let i = 0; i < states.length; i++) {
    for (const step of ways(shape, states[i])) {
      let to = number.get(step.to);
      if (to === undefined) {
        to = states.length;
        number.set(step.to, to);
        states.push(step.to);
      }
      arcs.push(i, to);
      prices.push(step.cost);
    }
    if (count === 1 && i === now.size - 1) break;
  }
  let costs = new Float64Array(states.length).fill(Number.POSITIVE_INFINITY);
  states.forEach((state, i) => {
    costs[i] = now.get(state) ?? Number.POSITIVE_INFINITY;
  });
  let next = new Float64Array(states.length);
  for (let unit = 0; unit < count; unit++) {
    next.fill(Number.POSITIVE_INFINITY);
    for (let arc = 0; arc < prices.length; arc++) {
      const cost = costs[arcs[2 * arc]] + prices[arc];
      if (cost < next[arcs[2 * arc + 1]]) next[arcs[2 * arc + 1]] = cost;
    }
    [costs, next] = [next, costs];
  }
  const out = new Map<Boundary, number>();
  states.forEach((state, i) => {
    if (costs[i] < Number.POSITIVE_INFINITY) out.set(state, costs[i]);
  });
  return out;
}

function* repeated(shapeOf: Int32Array): Generator<[shape: number, count: number]> {
  for (let g = 0; g < shapeOf.length; ) {
    let end = g + 1;
    while (end < shapeOf.length && shapeOf[end] === shapeOf[g]) end++;
    yield [shapeOf[g], end - g];
    g = end;
  }
}

function keep(best: Map<Boundary, Way>, way: Way): void {
  const known = best.get(way.state);
  if (!known || way.cost < known.cost - 1e-9) best.set(way.state, way);
}

function onward(now: Map<Boundary, Way>, shape: number, ways: Ways): Map<Boundary, Way> {
  const next = new Map<Boundary, Way>();
  for (const way of now.values()) {
    for (const step of ways(shape, way.state)) {
      keep(next, { state: step.to, cost: way.cost + step.cost, back: way, count: 1, step });
    }
  }
  return next;
}

/** The same passes in all units of a run; where that cannot be, in all but the first, the last, or both. */
function evenly(now: Map<Boundary, Way>, shape: number, count: number, ways: Ways): Map<Boundary, Way> {
  const out = new Map<Boundary, Way>();
  const steady = (from: Map<Boundary, Way>, times: number): Map<Boundary, Way> => {
    if (times === 0) return from;
    const next = new Map<Boundary, Way>();
    for (const way of from.values()) {
      for (const step of ways(shape, way.state)) {
        if (step.to !== way.state) continue;
        keep(next, { state: step.to, cost: way.cost + times * step.cost, back: way, count: times, step });
      }
    }
    return next;
  };
  const odd = (from: Map<Boundary, Way>): Map<Boundary, Way> => {
    const next = onward(from, shape, ways);
    for (const [state, way] of next) next.set(state, { ...way, cost: way.cost + UNEVEN });
    return next;
  };
  const entered = odd(now);
  for (const way of steady(now, count).values()) keep(out, way);
  for (const way of steady(entered, count - 1).values()) keep(out, way);
  for (const way of odd(steady(now, count - 1)).values()) keep(out, way);
  for (const way of odd(steady(entered, count - 2)).values()) keep(out, way);
  if (out.size > 0) return out;
  let plain = now;
  for (let i = 0; i < count; i++) plain = odd(plain);
  return plain;
}

function unwound(last: Way, layout: Layout, known: Known): Passes {
  const of = new Int32Array(layout.shapeOf.length);
  let g = of.length;
  let cost = 0;
  for (let way: Way | null = last; way?.step; way = way.back) {
    const { passes } = way.step;
    const text = String.fromCharCode(...passes);
    const pattern = numberOf(passes, text, known.patterns, known.patternNumbers);
    of.fill(pattern, g - way.count, g);
    g -= way.count;
    const id = layout.shapeOf[g];
    const { asked, price } = layout.shapes[id];
    const lengths = layout.lengths.get(id)!;
    for (let leg = 0; leg < passes.length; leg++) {
      cost += way.count * (passes[leg] - asked[leg]) * price[leg] * lengths[leg];
    }
  }
  return { of, patterns: known.patterns, cost };
}
