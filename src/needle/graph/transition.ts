import type { Boundary } from './boundary.js';
import type { Network } from './network.js';

/** One way through a unit: the state it leaves, its cost (priced mm, and what offends the looks), and the passes of each of its legs. */
export interface Transition {
  readonly to: Boundary;
  readonly cost: number;
  readonly passes: Uint8Array;
}

/** The cheapest way through a unit with legs of these lengths to each state it can leave. */
export function transitions(network: Network, legs: number, lengths: Float64Array): Transition[] {
  const { states, leaves } = network;
  const { from, to, leg, passes, perMm, penalty } = network.steps;
  const costs = new Float64Array(states).fill(Number.POSITIVE_INFINITY);
  const cameBy = new Int32Array(states);
  costs[0] = 0;
  for (let i = 0; i < from.length; i++) {
    let cost = costs[from[i]] + penalty[i];
    if (perMm[i] > 0) cost += perMm[i] * lengths[leg[i]];
    if (cost < costs[to[i]] - 1e-9) {
      costs[to[i]] = cost;
      cameBy[to[i]] = i;
    }
  }
  return leaves.map((boundary, i) => {
    const last = states - leaves.length + i;
    const sewn = new Uint8Array(legs);
    for (let at = last; at > 0; at = from[cameBy[at]]) {
      const step = cameBy[at];
      if (leg[step] >= 0) sewn[leg[step]] = passes[step];
    }
    return { to: boundary, cost: costs[last], passes: sewn };
  });
}
