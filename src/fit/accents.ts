import { boxOf } from '../geometry/box.js';
import type { Unit } from '../stitches/stitch.js';
import { drawnIn, type Standing, shareApart } from './accents-apart.js';
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
 * Seats the figures of an accent along a row, to its right hand as mirror images of those to its left. Figures that would
 * lie off the cloth the row may use are left out. Where seats crowd on the inner side of a corner or bend, those beside
 * each other are drawn smaller, and one that would still come too near to what stands there already is left out.
 */
export function seatedAccents(
  ask: AccentAsk,
  placing: Placing,
  scale: number,
  onCloth: IsOnCloth,
  within: IsOnCloth | null,
): SeatedAccents {
  const units = ask.figures.map((figure) => figure.build(scale));
  const leftOut: LeftOut[] = [];
  const chosen = seatsAlong(placing, ask.seat).filter(
    (_, k) => k >= ask.from && (k - ask.from) % ask.every === 0,
  );
  const standing: (Standing & { share: number; readonly chain: Chain })[] = [];
  chosen.forEach((spotOnLine, seat) => {
    const unit = units[seat % units.length];
    const spot = moved(spotOnLine, ask.away * scale, spotOnLine.hand * ask.turn);
    const chain = ornamentChain(unit, spot, ask.passes);
    const [at, radius] = middleOf(chain);
    if (!isWholly(chain, onCloth) || (within && !isBroadlyWithin(chain, within))) {
      leftOut.push({ at, why: 'past-end' });
      return;
    }
    const own = { unit, spot, seat, at, radius, share: 1, chain };
    // round a ring the first ones come behind the last
    const around = placing.closed && seat >= chosen.length - BESIDE ? standing.slice(0, BESIDE) : [];
    const beside = [...new Set([...around, ...standing.slice(-BESIDE)])];
    const isCrowded = beside.some((other) => {
      const apart = Math.hypot(at[0] - other.at[0], at[1] - other.at[1]);
      return apart < CLOSEST * (radius + other.radius);
    });
    const shares = isCrowded ? [0] : beside.map((other) => shareBeside(own, other));
    if (Math.min(...shares) === 0) {
      leftOut.push({ at, why: 'crowded' });
      return;
    }
    own.share = Math.min(1, ...shares);
    beside.forEach((other, i) => {
      other.share = Math.min(other.share, shares[i]);
    });
    standing.push(own);
  });
  const seated = standing.map(({ unit, spot, share, chain, at, radius }): Seated => {
    if (share === 1) return { chain, unit, at, radius };
    const smaller = drawnIn(unit, share);
    return { ...seatedOn(smaller, spot), unit: smaller };
  });
  return { seated, asked: chosen.length, leftOut };

  function seatedOn(unit: Unit, spot: Spot): Pick<Seated, 'chain' | 'at' | 'radius'> {
    const chain = ornamentChain(unit, spot, ask.passes);
    const [at, radius] = middleOf(chain);
    return { chain, at, radius };
  }

  /** How small one is drawn beside another; what is put on by hand keeps its size. */
  function shareBeside(own: Standing & { share: number }, other: Standing & { share: number }): number {
    const share = shareApart(own, other, [own.share, other.share], () =>
      usualStep(chosen, other.seat, own.seat - other.seat),
    );
    return ask.byHand !== null && share < 1 ? 0 : share;
  }
}

function isWholly({ path }: Chain, on: IsOnCloth): boolean {
  for (let i = 0; i < path.length; i += 2) if (!on(path[i], path[i + 1])) return false;
  return true;
}

/** Figures that may come near to the next one are among this many before it. */
const BESIDE = 8;
/** Round figures touch at 1; pointed ones fit between each other. */
const CLOSEST = 0.6;

/** Steps between seats are looked at among so many to both sides: sides of a corner have repeats of their own. */
const NEARBY = 6;

/** How far apart seats usually lie about one that are so many apart along their row, mm: the median. */
function usualStep(seats: readonly Spot[], about: number, apart: number): number {
  const step = Math.min(apart, seats.length - apart);
  const first = Math.max(0, Math.min(about - NEARBY, seats.length - step - 2 * NEARBY));
  const steps = seats
    .slice(first, Math.max(first + 1, Math.min(seats.length - step, first + 2 * NEARBY)))
    .map(({ x, y }, k) => Math.hypot(x - seats[first + k + step].x, y - seats[first + k + step].y));
  return steps.sort((a, b) => a - b)[steps.length >> 1];
}

/** A seat's spot moved along its own up, then turned. */
function moved({ x, y, theta, hand }: Spot, up: number, turn: number): Spot {
  return { x: x + up * Math.sin(theta), y: y - up * Math.cos(theta), theta: theta - turn, hand };
}

/** Middle and half of the greater extent of a figure on the cloth. */
function middleOf({ path }: Chain): [[number, number], number] {
  const { left, top, right, bottom } = boxOf([path]);
  return [[(left + right) / 2, (top + bottom) / 2], Math.max(right - left, bottom - top) / 2];
}
