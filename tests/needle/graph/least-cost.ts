import { type Boundary, START } from '../../../src/needle/graph/boundary.js';
import { type Ends, isFinal } from '../../../src/needle/graph/ends.js';
import type { Known } from '../../../src/needle/graph/known.js';
import { type Layout, repeated } from '../../../src/needle/graph/shape.js';
import { type Ways, waysThrough } from '../../../src/needle/graph/ways.js';

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
