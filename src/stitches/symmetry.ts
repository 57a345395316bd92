import type { Unit } from './stitch.js';

/**
 * The unit in the other hand: left and right exchanged. Order of work, joins and lengths stay.
 */
export function mirrored(unit: Unit): Unit {
  const flip = (line: Float64Array) => line.map((value, i) => (i % 2 ? 0 - value : value));
  return {
    ...unit,
    nodes: flip(unit.nodes),
    legs: unit.legs.map((leg) => ({ ...leg, path: flip(leg.path) })),
    ending: unit.ending.map((leg) => ({ ...leg, path: flip(leg.path) })),
    seats: unit.seats.map((seat) => ({ ...seat, v: 0 - seat.v })),
    reach: { left: unit.reach.right, right: unit.reach.left },
  };
}

/**
 * The same stitch growing the other way: u is counted from the other end, left stays left. Each leg keeps its from and
 * to, and the legs of a unit their order; it is the units that a hand now works from the last place on the line to the
 * first. `joins` speak of places on the line, so that they exchange: node a of this unit is node b of the unit that
 * stands next towards greater u. Closing and ending legs belong to the end of the work, before the first place on the
 * line.
 */
export function backwards(unit: Unit): Unit {
  const turn = (line: Float64Array) => line.map((value, i) => (i % 2 ? value : unit.length - value));
  return {
    ...unit,
    nodes: turn(unit.nodes),
    joins: unit.joins.map(([a, b]) => [b, a] as const),
    legs: unit.legs.map((leg) => ({ ...leg, path: turn(leg.path) })),
    ending: unit.ending.map((leg) => ({ ...leg, path: turn(leg.path) })),
    seats: unit.seats.map((seat) => ({ ...seat, u: unit.length - seat.u })),
    overhang: { start: unit.overhang.end, end: unit.overhang.start },
  };
}
