import { noise } from '../geometry/noise.js';
import type { Unit, UnitLeg } from '../stitches/stitch.js';
import type { Uneven } from './by-hand.js';
import type { Chain } from './fit.js';
import { GrowingChain, type Room } from './growing-chain.js';
import { type Layer, type Laying, layer } from './lay.js';
import { layOnThread, type Thread, threadsOverNodes } from './on-thread.js';
import { passesOf } from './place-ornament.js';

/** Units laid one after another, all built alike, over one part of a line. */
export interface UnitRun {
  readonly unit: Unit;
  readonly count: number;
  /** u of the first unit's start */
  readonly from: number;
  /** length each unit gets, mm: what the unit was built for, up to rounding */
  readonly length: number;
}

export interface Placing {
  readonly laying: Laying;
  readonly runs: readonly UnitRun[];
  /** the last unit joins the first */
  readonly closed: boolean;
  /** +1: as built; -1: left and right exchanged */
  readonly hand: 1 | -1;
  /** units alternate hands (glide) */
  readonly alternate: boolean;
  /** visible passes asked of a leg of share 1 */
  readonly passes: number;
  /** distance of the row's line to the left of the line that is laid along, mm */
  readonly beside: number;
  /** how far from even the hand works; evenly when not given */
  readonly uneven?: Uneven;
}

/**
 * Lays units on the cloth and joins them at the nodes they share. Where a line is straight a unit is one before it moved
 * along. Linear in the points of their legs.
 */
export function placeUnits(placing: Placing): Chain {
  const { runs, closed } = placing;
  const places = placesOf(placing);
  const closing = closed || places.length === 0 ? [] : closingLegs(runs[runs.length - 1].unit);
  const growing = new GrowingChain(room(runs, closing));
  const lay = layer(placing.laying);
  const fastenedIn = new Map(
    runs.map(({ unit }) => [unit, { shared: sharedNodes(unit, closed), over: threadsOverNodes(unit) }]),
  );
  /** nodes of the units laid so far, and what was laid before each */
  const tables: Int32Array[] = [];
  const grown = [growing.size];
  const likeBefore = repeatsBefore(placing, places, lay);
  for (const place of places) {
    const { index } = place;
    const { unit } = place.run;
    const like = likeBefore(index);
    if (like >= 0) {
      const { dx, dy } = between(lay, places[like], place);
      const shift = grown[index].nodes - grown[like].nodes;
      growing.again(grown[like], grown[like + 1], dx, dy, index);
      tables.push(tables[like].map((node) => (node < 0 ? node : node + shift)));
    } else {
      const table = joined(tables[index - 1], places[index - 1]?.run.unit, growing.table(unit));
      if (closed && index > 0 && index === places.length - 1) {
        for (const [a, b] of unit.joins) if (tables[0][b] >= 0) table[a] = tables[0][b];
      }
      layUnit(growing, lay, placing, place, unit.legs, table, fastenedIn.get(unit)!);
      tables.push(table);
    }
    grown.push(growing.size);
  }
  if (closing.length) {
    const place = afterLast(placing, places);
    const { unit } = place.run;
    const table = joined(tables[places.length - 1], unit, growing.table(unit));
    layUnit(growing, lay, placing, place, closing, table, fastenedIn.get(unit)!);
  }
  return growing.finish(places.length, closed);
}

/** How many units after it may share a node of a unit: from one to the next as `joins` hand it on. */
function handedOn({ joins }: Unit): number {
  const to = new Map(joins);
  let most = 0;
  for (const [from] of joins) {
    let units = 0;
    for (let node: number | undefined = from; node !== undefined && units <= joins.length; units++) {
      node = to.get(node);
    }
    most = Math.max(most, units - 1);
  }
  return most;
}

/**
 * For each unit the one before it that it repeats, moved along, or -1. Both, and the units before them, must stand alike:
 * in one run, to one hand, on a straight.
 */
function repeatsBefore(
  { closed, alternate, uneven }: Placing,
  places: readonly Place[],
  lay: Layer,
): (index: number) => number {
  const period = alternate ? 2 : 1;
  const last = closed ? places.length - 2 : places.length - 1;
  let run: UnitRun | null = null;
  let first = 0;
  let apart = 1;
  /** units before it whose threads a shared node of it may lie on */
  let leaning = 0;
  /** from this unit on, up to the one asked for last, all lie plainly on the line */
  let plainFrom = 0;
  return (index) => {
    const place = places[index];
    if (place.run !== run) {
      run = place.run;
      first = index;
      apart = Math.max(1, handedOn(run.unit));
      leaning = threadsOverNodes(run.unit).some((thread) => thread) ? apart : 0;
      plainFrom = index;
    }
    if (uneven || !isPlain(place, lay)) {
      plainFrom = index + 1;
      return -1;
    }
    const like = index - period;
    // the first unit of a run has other neighbors, and so have those that share what it laid; the last of a ring closes it
    return like - period >= first + apart && like - leaning >= plainFrom && index <= last ? like : -1;
  };
}

function isPlain({ start, length, before, after, run }: Place, lay: Layer): boolean {
  if (before !== length || after !== length) return false;
  const { overhang } = run.unit;
  const stretch = length / run.unit.length;
  return lay.isPlain(start - overhang.start * stretch, start + length + overhang.end * stretch);
}

/** How far one place lies from another. */
function between({ at, out }: Layer, from: Place, to: Place): { dx: number; dy: number } {
  at(from.start, 0);
  const [x, y] = out;
  at(to.start, 0);
  return { dx: out[0] - x, dy: out[1] - y };
}

/** Every unit's place, in order along the line. */
export function placesOf(placing: Placing): Place[] {
  const { runs, closed, uneven } = placing;
  const places = runs.flatMap((run, r) => {
    // a hand's repeats differ a little, though the ends of a side stay where they are
    const moved = (k: number) =>
      uneven && k > 0 && k < run.count ? uneven.lengths * noise(uneven.seed, r, k) : 0;
    return Array.from({ length: run.count }, (_, i) => ({
      run,
      start: run.from + (i + moved(i)) * run.length,
      length: uneven ? (1 + moved(i + 1) - moved(i)) * run.length : run.length,
    }));
  });
  return places.map(({ run, start, length }, index) => ({
    run,
    start,
    length,
    hand: handOf(placing, index),
    beside: placing.beside,
    index,
    before: (places[index - 1] ?? (closed ? places[places.length - 1] : null))?.length ?? length,
    after: (places[index + 1] ?? (closed ? places[0] : null))?.length ?? length,
  }));
}

/** Where the legs that close a row stand: as if another unit began there. They count as the last unit's. */
export function afterLast(placing: Placing, places: readonly Place[]): Place {
  const last = places[places.length - 1];
  return {
    ...last,
    start: last.start + last.length,
    hand: handOf(placing, places.length),
    before: last.length,
    after: last.length,
  };
}

const handOf = (placing: Placing, k: number): 1 | -1 =>
  placing.alternate && k % 2 === 1 ? (-placing.hand as 1 | -1) : placing.hand;

const closingLegs = (unit: Unit): UnitLeg[] => [...unit.closing.map((i) => unit.legs[i]), ...unit.ending];

/** Nodes of a unit that the unit before has laid already. */
function joined(before: Int32Array | undefined, unit: Unit | undefined, table: Int32Array): Int32Array {
  if (before && unit) for (const [a, b] of unit.joins) table[b] = before[a];
  return table;
}

/** Where one unit stands. */
export interface Place {
  readonly run: UnitRun;
  /** u of its start, and the length it has on the line, mm */
  readonly start: number;
  readonly length: number;
  readonly hand: 1 | -1;
  readonly beside: number;
  readonly index: number;
  /** lengths of the units beside it, its own where there is none */
  readonly before: number;
  readonly after: number;
}

/** A unit's own u as u of the guide line. What overhangs into the next unit keeps its share of that unit's length. */
export function alongLine({ run, start, length, before, after }: Place, u: number): number {
  const built = run.unit.length;
  if (u > built) return start + length + (u - built) * (after / built);
  if (u < 0) return start + u * (before / built);
  return start + u * (length / built);
}

/** A unit's own v as v of the guide line. */
export const acrossLine = ({ hand, beside }: Place, v: number): number => hand * v + beside;

/** 1 for the nodes of a unit that another unit may have laid. */
function sharedNodes({ joins, nodes }: Unit, closed: boolean): Uint8Array {
  const shared = new Uint8Array(nodes.length / 2);
  for (const [a, b] of joins) {
    shared[b] = 1;
    if (closed) shared[a] = 1;
  }
  return shared;
}

/** What is known of the nodes of a unit: 1 for those that another unit may have laid, and the threads that pass over them. */
interface Fastened {
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

function layUnit(
  growing: GrowingChain,
  lay: Layer,
  placing: Placing,
  place: Place,
  legs: readonly UnitLeg[],
  table: Int32Array,
  { shared, over }: Fastened,
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
    const stand = leg.bends ? null : standAt(lay, place, leg.anchor);
    const layPoint = (u: number, v: number) => {
      if (stand) layBeside(lay, stand, u, v);
      else lay.at(alongLine(place, u), acrossLine(place, v));
    };
    const from = stand ? rigidNode(leg.from, stand) : node(leg.from);
    const to = stand ? rigidNode(leg.to, stand) : node(leg.to);
    growing.startLeg(from, to, leg, place.index, passesOf(placing.passes, leg.share));
    const { path } = leg;
    const end = path.length - 2;
    growing.addNodePoint(from);
    for (let i = 2; i < end; i += 2) {
      layPoint(path[i], path[i + 1]);
      growing.addPoint(lay.out[0], lay.out[1]);
    }
    if (end > 0) growing.addNodePoint(to);
    if (end > 2 && (shared[leg.from] || shared[leg.to])) {
      layPoint(path[0], path[1]);
      const [x0, y0] = lay.out;
      layPoint(path[end], path[end + 1]);
      growing.settleEnds(x0, y0, lay.out[0], lay.out[1]);
    }
    if (leg.kind === 'straight') growing.hidePickUp();
  }
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

function standAt(lay: Layer, place: Place, anchor: number): Stand {
  const { nodes } = place.run.unit;
  const [u, v] = [nodes[2 * anchor], nodes[2 * anchor + 1]];
  lay.at(alongLine(place, u), acrossLine(place, v));
  const [x, y, theta, scale] = lay.out;
  return { anchor, u, v, x, y, cos: Math.cos(theta), sin: Math.sin(theta), scale, hand: place.hand };
}

/** Lays a point that keeps its place beside an anchor: turned with the line, not bent by it. */
function layBeside({ out }: Layer, stand: Stand, u: number, v: number): void {
  const du = (u - stand.u) * stand.scale;
  const dv = stand.hand * (v - stand.v) * stand.scale;
  out[0] = stand.x + du * stand.cos + dv * stand.sin;
  out[1] = stand.y + du * stand.sin - dv * stand.cos;
}

function room(runs: readonly UnitRun[], closing: readonly UnitLeg[]): Room {
  const points = (legs: readonly UnitLeg[]) => legs.reduce((sum, leg) => sum + leg.path.length / 2, 0);
  let nodes = 0;
  let legs = closing.length;
  let all = points(closing);
  for (const { unit, count } of runs) {
    nodes += (unit.nodes.length / 2) * count;
    legs += unit.legs.length * count;
    all += points(unit.legs) * count;
  }
  const extra = runs.length ? runs[runs.length - 1].unit.nodes.length / 2 : 0;
  return { nodes: nodes + extra, legs, points: all };
}
