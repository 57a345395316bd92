import type { Unit, UnitLeg } from '../stitches/stitch.js';
import type { GrowingChain } from './growing-chain.js';
import type { Layer } from './lay.js';
import { layOnThread, type Thread } from './on-thread.js';
import { passesOf } from './place-ornament.js';
import { acrossLine, alongLine, type Place, type Placing } from './unit-places.js';

/** 1 for the nodes of a unit that another unit may have laid. */
export function sharedNodes({ joins, nodes }: Unit, closed: boolean): Uint8Array {
  const shared = new Uint8Array(nodes.length / 2);
  for (const [a, b] of joins) {
    shared[b] = 1;
    if (closed) shared[a] = 1;
  }
  return shared;
}

/** What is known of the nodes of a unit: 1 for those that another unit may have laid, and the threads that pass over them. */
export interface Fastened {
  readonly shared: Uint8Array;
  readonly over: readonly (Thread | null)[];
}

/** Lays a place of a unit; one that a taut thread passes over stays on that thread where the line bends. */
export function layPlace(lay: Layer, place: Place, thread: Thread | null, u: number, v: number): void {
  if (!thread) {
    lay.at(alongLine(place, u), acrossLine(place, v));
    return;
  }
  const { nodes } = place.run.unit;
  const holes = [thread.from, thread.to].map(
    (node) => [alongLine(place, nodes[2 * node]), acrossLine(place, nodes[2 * node + 1])] as const,
  );
  layOnThread(lay, holes, alongLine(place, u), acrossLine(place, 0));
}

/**
 * Lays legs of a unit at its place; `table` has the node of the chain for each of the unit's nodes, -1 where it is not laid yet.
 * Figures that keep their shape are drawn in to `share` of their size.
 */
export function layUnit(
  growing: GrowingChain,
  lay: Layer,
  placing: Placing,
  place: Place,
  legs: readonly UnitLeg[],
  table: Int32Array,
  { shared, over }: Fastened,
  share = 1,
): void {
  const { nodes } = place.run.unit;
  if (lay.wedged) lay.drawIn(outermost(place));
  const node = (i: number): number => {
    if (table[i] < 0) {
      layPlace(lay, place, over[i], nodes[2 * i], nodes[2 * i + 1]);
      table[i] = growing.addNode(lay.out[0], lay.out[1]);
    }
    return table[i];
  };
  const rigidNode = (i: number, stand: Stand): number => {
    if (table[i] < 0 && i !== stand.anchor) {
      layBeside(lay, stand, nodes[2 * i], nodes[2 * i + 1]);
      table[i] = growing.addNode(lay.out[0], lay.out[1]);
    }
    return node(i);
  };
  for (const leg of legs) {
    const stand = leg.bends ? null : standAt(lay, place, leg.anchor, share);
    const from = stand ? rigidNode(leg.from, stand) : node(leg.from);
    const to = stand ? rigidNode(leg.to, stand) : node(leg.to);
    growing.startLeg(from, to, leg, place.index, passesOf(placing.passes, leg.share));
    const { path } = leg;
    const end = path.length - 2;
    growing.addNodePoint(from);
    for (let i = 2; i < end; i += 2) {
      layPoint(lay, place, stand, path[i], path[i + 1]);
      growing.addPoint(lay.out[0], lay.out[1]);
    }
    if (end > 0) growing.addNodePoint(to);
    if (end > 2 && (shared[leg.from] || shared[leg.to])) {
      layPoint(lay, place, stand, path[0], path[1]);
      const x0 = lay.out[0];
      const y0 = lay.out[1];
      layPoint(lay, place, stand, path[end], path[end + 1]);
      growing.settleEnds(x0, y0, lay.out[0], lay.out[1]);
    }
    if (leg.kind === 'straight') growing.hidePickUp();
  }
}

function layPoint(lay: Layer, place: Place, stand: Stand | null, u: number, v: number): void {
  if (stand) layBeside(lay, stand, u, v);
  else lay.at(alongLine(place, u), acrossLine(place, v));
}

/** The needle points of a unit that lie furthest out to either hand, where they come to lie: u v u v ... */
function outermost(place: Place): number[] {
  const { nodes } = place.run.unit;
  let [least, most] = [0, 0];
  for (let i = 1; i < nodes.length; i += 2) {
    least = Math.min(least, nodes[i]);
    most = Math.max(most, nodes[i]);
  }
  const found: number[] = [];
  for (let i = 0; i < nodes.length; i += 2) {
    const v = nodes[i + 1];
    const isFurthest = (v > 0 && v > most - 1e-9) || (v < 0 && v < least + 1e-9);
    if (isFurthest) found.push(alongLine(place, nodes[i]), acrossLine(place, v));
  }
  return found;
}

/** The node beside which a leg keeps its shape: its own u and v, where it lies, and the frame there. */
interface Stand {
  readonly anchor: number;
  readonly u: number;
  readonly v: number;
  readonly x: number;
  readonly y: number;
  readonly cos: number;
  readonly sin: number;
  readonly scale: number;
  readonly hand: 1 | -1;
}

function standAt(lay: Layer, place: Place, anchor: number, share: number): Stand {
  const { nodes } = place.run.unit;
  const u = nodes[2 * anchor];
  const v = nodes[2 * anchor + 1];
  lay.at(alongLine(place, u), acrossLine(place, v));
  const { out } = lay;
  return {
    anchor,
    u,
    v,
    x: out[0],
    y: out[1],
    cos: Math.cos(out[2]),
    sin: Math.sin(out[2]),
    scale: out[3] * share,
    hand: place.hand,
  };
}

/** Lays a point that keeps its place beside an anchor: turned with the line, not bent by it. */
function layBeside({ out }: Layer, stand: Stand, u: number, v: number): void {
  const du = (u - stand.u) * stand.scale;
  const dv = stand.hand * (v - stand.v) * stand.scale;
  out[0] = stand.x + du * stand.cos + dv * stand.sin;
  out[1] = stand.y + du * stand.sin - dv * stand.cos;
}
