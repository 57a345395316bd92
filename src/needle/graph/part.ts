import type { Chain } from '../../fit/fit.js';
import { int32s } from '../../geometry/flat.js';
import { groupsOf } from '../../geometry/groups.js';

/** A connected piece of a chain: its legs in hand order, grouped by the unit they belong to. */
export interface Part {
  /** indices into the chain's legs */
  readonly legs: Int32Array;
  /** group g is legs[start[g]] to legs[start[g + 1]] */
  readonly start: Int32Array;
}

/**
 * The connected parts of a chain, in the order of their first legs. Under-legs connect too, whether they will be sewn
 * or not; a part that asks for no thread at all is left out.
 */
export function partsOf(chain: Chain): Part[] {
  const { of: root, join } = groupsOf(chain.nodes.length >> 1);
  for (let leg = 0; leg < chain.from.length; leg++) join(chain.from[leg], chain.to[leg]);
  const order: number[] = [];
  const slot = int32s(chain.nodes.length >> 1).fill(-1);
  const asks: boolean[] = [];
  const size: number[] = [];
  for (let leg = 0; leg < chain.from.length; leg++) {
    const r = root(chain.from[leg]);
    if (slot[r] < 0) {
      slot[r] = order.length;
      order.push(r);
      asks.push(false);
      size.push(0);
    }
    size[slot[r]]++;
    if (chain.passes[leg] > 0) asks[slot[r]] = true;
  }
  const legs = size.map((n) => int32s(n));
  const filled = int32s(order.length);
  for (let leg = 0; leg < chain.from.length; leg++) {
    const s = slot[root(chain.from[leg])];
    legs[s][filled[s]++] = leg;
  }
  return legs.filter((_, s) => asks[s]).map((list) => grouped(chain, list));
}

function grouped(chain: Chain, legs: Int32Array): Part {
  const start = [0];
  for (let i = 1; i < legs.length; i++) {
    if (chain.unit[legs[i]] !== chain.unit[legs[i - 1]]) start.push(i);
  }
  start.push(legs.length);
  const starts = int32s(start.length);
  starts.set(start);
  return { legs, start: starts };
}
