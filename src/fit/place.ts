import type { Unit, UnitLeg } from '../stitches/stitch.js';
import { figureShares } from './figures-at-ends.js';
import type { Chain } from './fit.js';
import { GrowingChain, type Room } from './growing-chain.js';
import { type Layer, layer } from './lay.js';
import { layUnit, sharedNodes } from './lay-unit.js';
import { threadsOverNodes } from './on-thread.js';
import { repeatsBefore } from './repeats-before.js';
import { afterLast, type Place, type Placing, placesOf, type UnitRun } from './unit-places.js';

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
  const shares = figureShares(placing, places, lay);
  for (const place of places) {
    const { index } = place;
    const { unit } = place.run;
    const share = shares ? shares[index] : 1;
    const before = likeBefore(index);
    const like = before >= 0 && shares && shares[before] !== share ? -1 : before;
    if (like >= 0) {
      const { dx, dy } = between(lay, places[like], place);
      const shift = grown[index].nodes - grown[like].nodes;
      growing.again(grown[like], grown[like + 1], dx, dy, index);
      tables.push(shifted(tables[like], shift));
    } else {
      const table = joined(tables[index - 1], places[index - 1]?.run.unit, growing.table(unit));
      if (closed && index > 0 && index === places.length - 1) {
        for (const [a, b] of unit.joins) if (tables[0][b] >= 0) table[a] = tables[0][b];
      }
      layUnit(growing, lay, placing, place, unit.legs, table, fastenedIn.get(unit)!, share);
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

/** How far one place lies from another. */
function between({ at, out }: Layer, from: Place, to: Place): { dx: number; dy: number } {
  at(from.start, 0);
  const x = out[0];
  const y = out[1];
  at(to.start, 0);
  return { dx: out[0] - x, dy: out[1] - y };
}

const closingLegs = (unit: Unit): UnitLeg[] => [...unit.closing.map((i) => unit.legs[i]), ...unit.ending];

/** A table whose nodes were all laid so many later. */
function shifted(table: Int32Array, shift: number): Int32Array {
  const later = new Int32Array(table.length);
  for (let i = 0; i < table.length; i++) later[i] = table[i] < 0 ? table[i] : table[i] + shift;
  return later;
}

/** Nodes of a unit that the unit before has laid already. */
function joined(before: Int32Array | undefined, unit: Unit | undefined, table: Int32Array): Int32Array {
  if (before && unit) for (const [a, b] of unit.joins) table[b] = before[a];
  return table;
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
