import { boxOf } from '../geometry/box.js';
import type { Unit } from '../stitches/stitch.js';
import { isBroadlyWithin } from './broad-legs.js';
import type { IsOnCloth } from './cloth.js';
import type { AccentCount, Chain, LeftOut } from './fit.js';
import { ornamentChain, type Spot } from './place-ornament.js';
import { seatsAlong } from './seats.js';
import type { Placing } from './unit-places.js';

/** Figures on the seats of one row. */
export interface AccentAsk {
  /** index of the row */
  readonly row: number;
  readonly seat: string;
  /** figures for successive seats, in turn: at least one */
  readonly figures: readonly Figures[];
  /** what each of the figure's threads does */
  readonly threads: readonly string[];
  /** what is put on by hand instead, within the figure's extent; null when it is sewn */
  readonly byHand: string | null;
  readonly passes: number;
  /** on every seat, every second, ... and the first that gets one, from 0 */
  readonly every: number;
  readonly from: number;
  /** turned from straight up, radians counterclockwise to the left of the line, clockwise to its right */
  readonly turn: number;
  /** moved away from the seat, straight up, mm at scale 1 */
  readonly away: number;
}

/** A figure at the size asked for, times a scale. */
export interface Figures {
  build(scale: number): Unit;
}

/** One figure on its seat. */
export interface Seated {
  readonly chain: Chain;
  readonly unit: Unit;
  readonly at: readonly [number, number];
  readonly radius: number;
}

/** The figures of an accent along a row, in its order, and those that were to stand there too. */
export interface SeatedAccents extends AccentCount {
  readonly seated: readonly Seated[];
}

/**
 * Seats the figures of an accent along a row, to its right hand as mirror images of those to its left. Figures that would lie off the cloth the row may use are left out, as are
 * those nearer to the one before than both are wide, where seats crowd on the inner side of a corner.
 */
export function seatedAccents(
  ask: AccentAsk,
  placing: Placing,
  scale: number,
  onCloth: IsOnCloth,
  within: IsOnCloth | null,
): SeatedAccents {
  const units = ask.figures.map((figure) => figure.build(scale));
  const seated: Seated[] = [];
  const leftOut: LeftOut[] = [];
  const chosen = seatsAlong(placing, ask.seat).filter(
    (_, k) => k >= ask.from && (k - ask.from) % ask.every === 0,
  );
  chosen.forEach((seat, k) => {
    const unit = units[k % units.length];
    const spot = moved(seat, ask.away * scale, seat.hand * ask.turn);
    const chain = ornamentChain(unit, spot, ask.passes);
    const [at, radius] = middleOf(chain);
    if (!isWholly(chain, onCloth) || (within && !isBroadlyWithin(chain, within))) {
      leftOut.push({ at, why: 'past-end' });
      return;
    }
    const isCrowded = seated.slice(-BESIDE).some((other) => {
      const apart = Math.hypot(at[0] - other.at[0], at[1] - other.at[1]);
      return apart < CLOSEST * (radius + other.radius);
    });
    if (isCrowded) leftOut.push({ at, why: 'crowded' });
    else seated.push({ chain, unit, at, radius });
  });
  return { seated, asked: chosen.length, leftOut };
}

function isWholly({ path }: Chain, on: IsOnCloth): boolean {
  for (let i = 0; i < path.length; i += 2) if (!on(path[i], path[i + 1])) return false;
  return true;
}

/** Figures that may come near to the next one are among this many before it. */
const BESIDE = 8;
/** Round figures touch at 1; pointed ones fit between each other. */
const CLOSEST = 0.6;

/** A seat's spot moved along its own up, then turned. */
function moved({ x, y, theta, hand }: Spot, up: number, turn: number): Spot {
  return { x: x + up * Math.sin(theta), y: y - up * Math.cos(theta), theta: theta - turn, hand };
}

/** Middle and half of the greater extent of a figure on the cloth. */
function middleOf({ path }: Chain): [[number, number], number] {
  const { left, top, right, bottom } = boxOf([path]);
  return [[(left + right) / 2, (top + bottom) / 2], Math.max(right - left, bottom - top) / 2];
}
