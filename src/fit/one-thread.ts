import type { Unit } from '../stitches/stitch.js';
import type { Chain } from './fit.js';

/** The thread of each leg class of a unit: index by class. */
export function threadsByClass(unit: Unit): Uint8Array {
  const all = [...unit.legs, ...unit.ending];
  const threads = new Uint8Array(1 + Math.max(-1, ...all.map((leg) => leg.class)));
  for (const leg of all) threads[leg.class] = leg.thread;
  return threads;
}

/**
 * The legs of one thread of a chain, in their order, over the nodes they use. A stitch in several threads is fitted as
 * one and sewn thread by thread.
 */
export function ofOneThread(chain: Chain, threads: Uint8Array, thread: number): Chain {
  const legs: number[] = [];
  for (let leg = 0; leg < chain.from.length; leg++) {
    if (threads[chain.legClass[leg]] === thread) legs.push(leg);
  }
  if (legs.length === chain.from.length) return chain;
  const numbers = new Int32Array(chain.nodes.length / 2).fill(-1);
  const nodes: number[] = [];
  const numbered = (node: number): number => {
    if (numbers[node] < 0) {
      numbers[node] = nodes.length / 2;
      nodes.push(chain.nodes[2 * node], chain.nodes[2 * node + 1]);
    }
    return numbers[node];
  };
  const pathStart = new Int32Array(legs.length + 1);
  legs.forEach((leg, i) => {
    pathStart[i + 1] = pathStart[i] + chain.pathStart[leg + 1] - chain.pathStart[leg];
  });
  const path = new Float64Array(2 * pathStart[legs.length]);
  legs.forEach((leg, i) => {
    path.set(chain.path.subarray(2 * chain.pathStart[leg], 2 * chain.pathStart[leg + 1]), 2 * pathStart[i]);
  });
  const from = Int32Array.from(legs, (leg) => numbered(chain.from[leg]));
  const to = Int32Array.from(legs, (leg) => numbered(chain.to[leg]));
  return {
    units: chain.units,
    closed: chain.closed,
    nodes: Float64Array.from(nodes),
    from,
    to,
    legClass: Uint16Array.from(legs, (leg) => chain.legClass[leg]),
    unit: Int32Array.from(legs, (leg) => chain.unit[leg]),
    passes: Uint8Array.from(legs, (leg) => chain.passes[leg]),
    kind: legs.map((leg) => chain.kind[leg]),
    size: Float32Array.from(legs, (leg) => chain.size[leg]),
    pathStart,
    path,
  };
}
