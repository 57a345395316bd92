import type { Boundary } from './boundary.js';
import type { Ends } from './ends.js';
import type { Known } from './known.js';
import { type Looks, type Network, networkOf } from './network.js';
import type { Layout } from './shape.js';
import { type Transition, transitions } from './transition.js';

/** The ways through a unit of a shape from a state. */
export type Ways = (shape: number, state: Boundary) => readonly Transition[];

/** Ways through the units of one part: networks are shared with all parts, costs are this part's own. */
export function waysThrough(layout: Layout, ends: Ends, known: Known, looks: (shape: number) => Looks): Ways {
  const tables = new Map<number, { key: string; looks: Looks; from: Map<Boundary, readonly Transition[]> }>();
  return (id, state) => {
    let table = tables.get(id);
    if (!table) {
      const own = looks(id);
      table = { key: `${id},${ends},${own.even},${own.wanted}`, looks: own, from: new Map() };
      tables.set(id, table);
    }
    let list = table.from.get(state);
    if (!list) {
      const shape = layout.shapes[id];
      const lengths = layout.lengths.get(id)!;
      const make = () => networkOf(shape, lengths, state, ends, table!.looks);
      let network = networkFor(known, table.key, state, make);
      if (network.pruned) network = networkFor(known, `${table.key},${lengths}`, state, make);
      list = transitions(network, lengths);
      table.from.set(state, list);
    }
    return list;
  };
}

function networkFor({ networks }: Known, key: string, state: Boundary, make: () => Network): Network {
  let byState = networks.get(key);
  if (!byState) {
    byState = new Map();
    networks.set(key, byState);
  }
  let network = byState.get(state);
  if (!network) {
    network = make();
    byState.set(state, network);
  }
  return network;
}
