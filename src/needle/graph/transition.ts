import { float64s, int32s, uint8s } from '../../geometry/flat.js';
import type { Boundary } from './boundary.js';
import type { Network } from './network.js';

/** One way through a unit: the state it leaves, and its cost (priced mm, and what offends the looks). */
export interface Transition {
  readonly to: Boundary;
  readonly cost: number;
  /** the way back through the network: its last state, and the step by which each state is best reached */
  readonly network: Network;
  readonly last: number;
  readonly cameBy: Int32Array;
}

/** The cheapest way through a unit with legs of these lengths to each state it can leave. */
export function transitions(network: Network, lengths: Float64Array): Transition[] {
  const { states, leaves } = network;
  const { from, to, leg, perMm, penalty } = network.steps;
  const costs = float64s(states).fill(Number.POSITIVE_INFINITY);
  const cameBy = int32s(states);
  costs[0] = 0;
  for (let i = 0; i < from.length; i++) {
    let cost = costs[from[i]] + penalty[i];
    if (perMm[i] > 0) cost += perMm[i] * lengths[leg[i]];
    if (cost < costs[to[i]] - 1e-9) {
      costs[to[i]] = cost;
      cameBy[to[i]] = i;
    }
  }
  const first = states - leaves.length;
  return leaves.map((to, i) => ({ to, cost: costs[first + i], network, last: first + i, cameBy }));
}

/** The passes that a way through a unit gives to each of its legs. */
export function passesOf({ network, last, cameBy }: Transition, legs: number): Uint8Array {
  const { from, leg, passes } = network.steps;
  const sewn = uint8s(legs);
  for (let at = last; at > 0; at = from[cameBy[at]]) {
    const step = cameBy[at];
    if (leg[step] >= 0) sewn[leg[step]] = passes[step];
  }
  return sewn;
}
