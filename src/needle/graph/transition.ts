import type { Boundary } from './boundary.js';
import type { Network } from './network.js';
import type { Shape } from './shape.js';

/** One way through a unit: the state it leaves, its cost (priced mm, and what offends the looks), and the passes of each of its legs. */
export interface Transition {
  readonly to: Boundary;
  readonly cost: number;
  readonly passes: Uint8Array;
}

/** The cheapest way through a unit with legs of these lengths to each state it can leave. */
export function transitions(network: Network, shape: Shape, lengths: Float64Array): Transition[] {
  const { states, steps, leaves } = network;
  const costs = new Float64Array(states).fill(Number.POSITIVE_INFINITY);
  const cameBy = new Int32Array(states).fill(-1);
  costs[0] = 0;
  for (let i = 0; i < steps.length; i++) {
    const { from, to, leg, passes, penalty } = steps[i];
    const added = leg < 0 ? 0 : (passes - shape.asked[leg]) * lengths[leg] * shape.price[leg];
    const cost = costs[from] + added + penalty;
    if (cost < costs[to] - 1e-9) {
      costs[to] = cost;
      cameBy[to] = i;
    }
  }
  return leaves.map((to, i) => {
    const last = states - leaves.length + i;
    const passes = new Uint8Array(shape.from.length);
    for (let at = last; at > 0; at = steps[cameBy[at]].from) {
      const { leg, passes: count } = steps[cameBy[at]];
      if (leg >= 0) passes[leg] = count;
    }
    return { to, cost: costs[last], passes };
  });
}
