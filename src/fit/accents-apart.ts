import { nearestOnSegment } from '../geometry/nearest.js';
import type { Unit } from '../stitches/stitch.js';
import { APART, SMALLEST } from './figures-apart.js';
import type { Chain } from './fit.js';
import { ornamentChain, type Spot } from './place-ornament.js';

const SHARE_STEP = 0.05;
/** Distances that differ by less are one, mm. */
const NEARER = 0.05;
/** Seats no nearer than this share of what is usual stand as even as a hand sets them. */
const EVEN = 0.95;
/** Figures whose headings differ by less stand as on a straight: the sine of it. */
const TURNED = 0.1;

/** A figure as it would stand by itself. */
export interface Standing {
  readonly unit: Unit;
  readonly spot: Spot;
  /** which seat of its row, of those that get one */
  readonly seat: number;
  /** middle and half of the greater extent of it on the cloth, mm */
  readonly at: readonly [number, number];
  readonly radius: number;
}

/**
 * How small two figures beside each other are to be drawn so that they stand as far apart as on a straight, or APART,
 * whichever is less: 1 where they do, 0 where even the smallest would come too near.
 *
 * @param shares how small each is drawn already
 * @param along how far apart their seats usually lie, mm
 */
export function shareApart(
  a: Standing,
  b: Standing,
  shares: readonly [number, number],
  along: () => number,
): number {
  const middles = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
  // a figure as long as broad reaches out to the corners of its box
  if (middles > Math.SQRT2 * (a.radius + b.radius) + APART) return 1;
  const seats = Math.hypot(a.spot.x - b.spot.x, a.spot.y - b.spot.y);
  const isTurned = Math.abs(Math.sin(a.spot.theta - b.spot.theta)) > TURNED;
  const usual = along();
  if (!isTurned && middles > seats - NEARER && seats > EVEN * usual) return 1;
  const needed = Math.min(APART, apartOnStraight(a, b, usual));
  for (let share = 1; share >= SMALLEST; share -= SHARE_STEP) {
    const [own, other] = [a, b].map(({ unit, spot }, i) =>
      ornamentChain(drawnIn(unit, Math.min(share, shares[i])), spot, 1),
    );
    if (apart(own, other) >= needed - NEARER) return share;
  }
  return 0;
}

/** A figure made smaller about its seat; thread and knots stay as thick. */
export function drawnIn(unit: Unit, share: number): Unit {
  if (share === 1) return unit;
  const smaller = (uv: Float64Array) => uv.map((value) => share * value);
  const legs = unit.legs.map((leg) => ({ ...leg, path: smaller(leg.path) }));
  return { ...unit, nodes: smaller(unit.nodes), legs };
}

/** How far apart two figures stand side by side on a straight, whichever comes first; 0 where they cross there, too. */
function apartOnStraight(a: Standing, b: Standing, along: number): number {
  const on = ({ unit, spot: { hand } }: Standing, x: number) =>
    ornamentChain(unit, { x, y: 0, theta: 0, hand }, 1);
  return Math.min(apart(on(a, 0), on(b, along)), apart(on(b, 0), on(a, along)));
}

/** The least distance between the threads of two figures, knots in all their width, mm. */
const apart = (a: Chain, b: Chain): number => Math.max(0, Math.min(fromPoints(a, b), fromPoints(b, a)));

/** The same from the points of one to the legs of the other. */
function fromPoints(a: Chain, b: Chain): number {
  let least = Infinity;
  a.kind.forEach((kind, leg) => {
    if (kind === 'under') return;
    for (let p = a.pathStart[leg]; p < a.pathStart[leg + 1]; p++) {
      const point = [a.path[2 * p], a.path[2 * p + 1]] as const;
      b.kind.forEach((other, k) => {
        if (other === 'under') return;
        const [first, last] = [b.pathStart[k], b.pathStart[k + 1] - 1];
        for (let q = first; q < Math.max(first + 1, last); q++) {
          const r = Math.min(q + 1, last);
          const { distance } = nearestOnSegment(
            point,
            [b.path[2 * q], b.path[2 * q + 1]],
            [b.path[2 * r], b.path[2 * r + 1]],
          );
          least = Math.min(least, distance - (a.size[leg] + b.size[k]) / 2);
        }
      });
    }
  });
  return least;
}
