import { int32s } from '../../geometry/flat.js';
import { type Boundary, START } from './boundary.js';
import { type Ends, isFinal } from './ends.js';
import { type Known, numberOf } from './known.js';
import { keepsTo, modelOf, wantedAs } from './model.js';
import { type Layout, repeated } from './shape.js';
import { passesOf, type Transition } from './transition.js';
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
  const model = modelOf(layout, first);
  if (keepsTo(model, layout, first)) return first;
  return solve(layout, ends, even, known, (id) => wantedAs(model, layout.shapes[id])) ?? first;
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
  const of = int32s(layout.shapeOf.length);
  let g = of.length;
  let cost = 0;
  for (let way: Way | null = last; way?.step; way = way.back) {
    const id = layout.shapeOf[g - 1];
    const { asked, price } = layout.shapes[id];
    const passes = passesOf(way.step, asked.length);
    const text = String.fromCharCode(...passes);
    const pattern = numberOf(passes, text, known.patterns, known.patternNumbers);
    of.fill(pattern, g - way.count, g);
    g -= way.count;
    const lengths = layout.lengths.get(id)!;
    for (let leg = 0; leg < passes.length; leg++) {
      cost += way.count * (passes[leg] - asked[leg]) * price[leg] * lengths[leg];
    }
  }
  return { of, patterns: known.patterns, cost };
}
