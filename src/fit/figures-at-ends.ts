import { float64s } from '../geometry/flat.js';
import type { Unit, UnitLeg } from '../stitches/stitch.js';
import { isBroadlyOn } from './broad-legs.js';
import { figuresApart, SMALLEST } from './figures-apart.js';
import type { Chain } from './fit.js';
import { GrowingChain, type Room } from './growing-chain.js';
import type { Layer } from './lay.js';
import { type Fastened, layUnit, sharedNodes } from './lay-unit.js';
import { threadsOverNodes } from './on-thread.js';
import type { Cloth, Place, Placing } from './unit-places.js';

/** The size at which a figure just fits is found by halving so often, to a hundredth of its own. */
const HALVINGS = 6;

/**
 * By how much figures that keep their shape are drawn smaller, unit by unit: beside each other on the inner side of a
 * bend, and at the ends of a row that is cut. Null where all keep their size.
 */
export function figureShares(placing: Placing, places: readonly Place[], lay: Layer): Float64Array | null {
  const apart = figuresApart(placing, places, lay);
  const { cloth, closed, runs } = placing;
  if (!cloth || closed) return apart;
  const figures = new Map(runs.map(({ unit }) => [unit, figureOf(unit)]));
  if ([...figures.values()].every((figure) => figure === null)) return apart;
  return figuresAtEnds({ placing, lay, cloth, figures }, places, apart);
}

/** What figures are laid on. */
interface Ground {
  readonly placing: Placing;
  readonly lay: Layer;
  readonly cloth: Cloth;
  /** what is seen of the figure of each unit; null where it has none */
  readonly figures: ReadonlyMap<Unit, Seen | null>;
}

/** Legs that keep their shape, and what is known of the nodes of their unit. */
interface Seen {
  readonly legs: readonly UnitLeg[];
  readonly fastened: Fastened;
  readonly room: Room;
}

/**
 * The last figures before a slanting end, which would be cut there, are drawn so much smaller that they lie on the cloth
 * whole; one that would be less than SMALLEST keeps its size and is cut. From either end on figures are asked until those
 * of both hands lie on the cloth as they are: that costs as much as a few units, however many there are.
 *
 * @param apart by which share they are drawn smaller already; null where none is
 */
function figuresAtEnds(
  ground: Ground,
  places: readonly Place[],
  apart: Float64Array | null,
): Float64Array | null {
  const shares = float64s(places.length).fill(1);
  if (apart) shares.set(apart);
  const hands = ground.placing.alternate ? 2 : 1;
  let isAny = apart !== null;
  const fromEnd = (first: number, sense: 1 | -1) => {
    let whole = 0;
    for (let i = first; whole < hands && places[i]; i += sense) {
      const most = apart ? apart[i] : 1;
      const share = fitting(ground, places[i], most);
      whole = share === most ? whole + 1 : 0;
      if (share === null || share === most) continue;
      shares[i] = share;
      isAny = true;
    }
  };
  fromEnd(0, 1);
  fromEnd(places.length - 1, -1);
  return isAny ? shares : null;
}

/** The largest share, `most` or less, at which all of a figure lies on the cloth; null where none does. */
function fitting(ground: Ground, place: Place, most: number): number | null {
  const seen = ground.figures.get(place.run.unit);
  if (!seen) return most;
  const { cloth } = ground;
  const large = drawn(ground, place, seen, most);
  if (liesOn(large, cloth)) return most;
  const small = drawn(ground, place, seen, SMALLEST);
  if (!liesOn(small, cloth)) return null;
  // every point moves straight to where it stands
  const between = (t: number): Chain => ({
    ...large,
    path: small.path.map((value, i) => value + t * (large.path[i] - value)),
  });
  let [inside, outside] = [0, 1];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (inside + outside) / 2;
    if (liesOn(between(middle), cloth)) inside = middle;
    else outside = middle;
  }
  return SMALLEST + inside * (most - SMALLEST);
}

/** Whether nothing of a figure would be cut. */
function liesOn(figure: Chain, { allowed, broadly }: Cloth): boolean {
  const { path, kind } = figure;
  for (let i = 0; i < path.length; i += 2) if (!allowed(path[i], path[i + 1])) return false;
  return !broadly || kind.every((_, leg) => isBroadlyOn(figure, leg, broadly));
}

/** What is seen of the figures of a unit that keep their shape; nothing of those that hang together with the next unit's. */
function figureOf(unit: Unit): Seen | null {
  const { joins, nodes } = unit;
  const legs = unit.legs.filter(({ bends, kind }) => !bends && kind !== 'under');
  const isJoined = (node: number) => joins.some(([a, b]) => a === node || b === node);
  if (legs.length === 0 || legs.some(({ from, to }) => isJoined(from) || isJoined(to))) return null;
  const points = legs.reduce((sum, { path }) => sum + path.length / 2, 0);
  return {
    legs,
    fastened: { shared: sharedNodes(unit, false), over: threadsOverNodes(unit) },
    room: { nodes: nodes.length / 2, legs: legs.length, points },
  };
}

/** Those legs by themselves, at a share of their size. */
function drawn({ placing, lay }: Ground, place: Place, { legs, fastened, room }: Seen, share: number): Chain {
  const growing = new GrowingChain(room);
  layUnit(growing, lay, placing, place, legs, growing.table(place.run.unit), fastened, share);
  return growing.finish(1, false);
}
