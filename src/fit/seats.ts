import { wrapAngle } from '../geometry/point.js';
import type { Unit } from '../stitches/stitch.js';
import { figureShares } from './figures-at-ends.js';
import { type Layer, layer } from './lay.js';
import { layPlace } from './lay-unit.js';
import { threadOver } from './on-thread.js';
import type { Spot } from './place-ornament.js';
import { CREST } from './rows.js';
import { afterLast, type Place, type Placing, placesOf } from './unit-places.js';

/** Seats lie at the same place as a hole when they are this near, mm. */
const SAME = 1e-6;
/** The flanks of a tip are looked at this far from it, mm. */
const BESIDE_TIP = 0.01;

/** A seat on the cloth: theta points so that the figure's own up leads away from the line. */
export interface SeatSpot extends Spot {
  /** which side of the line it lies on; on the line itself, the hand of its unit */
  readonly hand: 1 | -1;
}

/**
 * The seats of one name along a row, in the order of its units; where the row is closed by a last stroke whose hole is
 * such a seat, that one too. Empty when the stitch has no seat of that name.
 */
export function seatsAlong(placing: Placing, name: string): SeatSpot[] {
  const lay = layer(placing.laying);
  if (name === CREST) return crests(placing, lay);
  const spots: SeatSpot[] = [];
  const places = placesOf(placing);
  const shares = figureShares(placing, places, lay);
  const add = (place: Place, share = 1) => {
    const seat = place.run.unit.seats.find((one) => one.name === name);
    if (!seat) return;
    const [u, v] = onFigure(place.run.unit, seat, share);
    layPlace(lay, place, threadOver(place.run.unit, seat.u, seat.v), u, v);
    const hand = place.hand * seat.v < -SAME ? -1 : place.hand * seat.v > SAME ? 1 : place.hand;
    const [x, y, theta] = lay.out;
    spots.push({ x, y, theta: hand === 1 ? theta : theta + Math.PI, hand });
  };
  for (const [i, place] of places.entries()) add(place, shares?.[i]);
  if (places.length && !placing.closed && closesOnSeat(placing.runs[placing.runs.length - 1].unit, name))
    add(afterLast(placing, places));
  return spots;
}

/** Where a seat lies on a unit whose figures are drawn in to a share of their size; what is on no figure stays. */
function onFigure(
  { legs, nodes }: Unit,
  { u, v }: { u: number; v: number },
  share: number,
): [number, number] {
  const isHere = (node: number) => Math.hypot(nodes[2 * node] - u, nodes[2 * node + 1] - v) < SAME;
  const leg = share < 1 && legs.find(({ bends, from, to }) => !bends && (isHere(from) || isHere(to)));
  if (!leg) return [u, v];
  const [au, av] = [nodes[2 * leg.anchor], nodes[2 * leg.anchor + 1]];
  return [au + share * (u - au), av + share * (v - av)];
}

/** Every top of the waves that a row is worked on; up leads on, away from the seam. */
function crests({ laying }: Placing, lay: Layer): SeatSpot[] {
  return (laying.crests ?? []).map(({ at, hand }) => {
    // a tip points between its flanks
    lay.at(at - BESIDE_TIP, 0);
    const before = lay.out[2];
    lay.at(at + BESIDE_TIP, 0);
    const after = lay.out[2];
    lay.at(at, 0);
    const [x, y] = lay.out;
    const theta = before + wrapAngle(after - before) / 2;
    return { x, y, theta: hand === 1 ? theta : theta + Math.PI, hand };
  });
}

/** Whether one of the legs that close the row begins or ends in the hole that is this seat. */
export function closesOnSeat(unit: Unit, name: string): boolean {
  const seat = unit.seats.find((one) => one.name === name);
  if (!seat) return false;
  return [...unit.closing.map((i) => unit.legs[i]), ...unit.ending].some((leg) =>
    [leg.from, leg.to].some(
      (node) => Math.hypot(unit.nodes[2 * node] - seat.u, unit.nodes[2 * node + 1] - seat.v) < SAME,
    ),
  );
}
