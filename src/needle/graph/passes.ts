import { type Boundary, finished, START } from './boundary.js';
import type { Layout } from './shape.js';
import { type Ends, type Transition, transitions } from './transition.js';

/** Passes for each leg of a part, group by group, such that one trail can sew them all. */
export interface Passes {
  /** for each group, the passes of its legs; groups alike share one array */
  readonly of: readonly Uint8Array[];
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
 * number, together with the under-legs needed to connect (Kwan 1960 for the closed walk). Exact, by dynamic programming over the units
 * with the parity and connection of the shared nodes as state; linear in the number of units.
 *
 * With `even`, repeats of one shape that follow each other get equal passes wherever a trail allows that, even when it
 * costs thread. Returns null when no such trail exists.
 */
export function leastPasses(layout: Layout, ends: Ends, even: boolean, start?: number): Passes | null {
  const ways = waysThrough(layout, ends, start);
  let now = new Map<Boundary, Way>([[START, { state: START, cost: 0, back: null, count: 0, step: null }]]);
  for (const [shape, count] of repeated(layout.shapeOf)) {
    if (even && count > 1) now = evenly(now, shape, count, ways);
    else for (let i = 0; i < count; i++) now = onward(now, shape, ways);
  }
  let best: Way | null = null;
  for (const way of now.values()) {
    if (finished(way.state, ends === 'through') && (!best || way.cost < best.cost - 1e-9)) best = way;
  }
  return best && unwound(best);
}

/** The least added cost alone, for the account of what evenness and order cost: no memory of the way. */
export function leastCost(layout: Layout, ends: Ends): number {
  const ways = waysThrough(layout, ends);
  let now = new Map<Boundary, number>([[START, 0]]);
  for (const [shape, count] of repeated(layout.shapeOf)) {
    let before = new Map<Boundary, number>();
    for (let i = 0; i < count; i++) {
      const next = new Map<Boundary, number>();
      for (const [state, cost] of now) {
        for (const t of ways(shape, state)) {
          if (!(next.get(t.to)! <= cost + t.cost)) next.set(t.to, cost + t.cost);
        }
      }
      const gain = steadyGain(before, now, next);
      if (gain !== null) {
        // from here on every two units add the same to every state
        const pairs = (count - 1 - i) >> 1;
        for (const [state, cost] of next) next.set(state, cost + pairs * gain);
        i += 2 * pairs;
      }
      before = now;
      now = next;
    }
  }
  let best = Number.POSITIVE_INFINITY;
  for (const [state, cost] of now) if (finished(state, ends === 'through')) best = Math.min(best, cost);
  return best;
}

/** How much two units add, when they add the same to every state; else null. */
function steadyGain(
  twoAgo: Map<Boundary, number>,
  oneAgo: Map<Boundary, number>,
  now: Map<Boundary, number>,
): number | null {
  if (twoAgo.size !== now.size || oneAgo.size === 0) return null;
  let gain: number | null = null;
  for (const [state, cost] of now) {
    const was = twoAgo.get(state);
    if (was === undefined) return null;
    gain ??= cost - was;
    if (Math.abs(cost - was - gain) > 1e-9) return null;
  }
  return gain;
}

type Ways = (shape: number, state: Boundary) => readonly Transition[];

function waysThrough(layout: Layout, ends: Ends, start?: number): Ways {
  const known = layout.shapes.map(() => new Map<Boundary, Transition[]>());
  return (shape, state) => {
    let found = known[shape].get(state);
    if (!found) {
      found = transitions(layout.shapes[shape], layout.lengths[shape], state, ends, start);
      known[shape].set(state, found);
    }
    return found;
  };
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

function unwound(last: Way): Passes {
  const of: Uint8Array[] = [];
  let cost = 0;
  for (let way: Way | null = last; way?.step; way = way.back) {
    for (let i = 0; i < way.count; i++) of.push(way.step.passes);
    cost += way.count * way.step.cost;
  }
  return { of: of.reverse(), cost };
}
