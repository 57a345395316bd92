import type { Unit } from '../stitches/stitch.js';
import type { Chain } from './fit.js';

/** The thread of each leg class of a unit: index by class. */
export function threadsByClass(unit: Unit): Uint8Array {
  const all = [...unit.legs, ...unit.ending];
  const threads = new Uint8Array(1 + Math.max(-1, ...all.map((leg) => leg.class)));
  for (const leg of all) threads[leg.class] = leg.thread;
  return threads;
}

/** The chain of every unit by itself, for stitches whose units stand apart. Linear in the legs. */
export function ofOneUnit(chain: Chain): Chain[] {
  const chains: Chain[] = [];
  for (let leg = 0; leg < chain.from.length; ) {
    let end = leg;
    while (end < chain.from.length && chain.unit[end] === chain.unit[leg]) end++;
    const own = Array.from({ length: end - leg }, (_, i) => leg + i);
    chains.push({ ...legsOf(chain, own), units: 1, closed: false });
    leg = end;
  }
  return chains;
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
  return legs.length === chain.from.length ? chain : legsOf(chain, legs);
}

/** Some legs of a chain, ascending, over the nodes they use. */
function legsOf(chain: Chain, legs: readonly number[]): Chain {
  const numbers = new Map<number, number>();
  const nodes: number[] = [];
  const numbered = (node: number): number => {
    const known = numbers.get(node);
    if (known !== undefined) return known;
    numbers.set(node, nodes.length / 2);
    nodes.push(chain.nodes[2 * node], chain.nodes[2 * node + 1]);
    return nodes.length / 2 - 1;
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
    ...chain,
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
