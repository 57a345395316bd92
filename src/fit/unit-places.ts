import { noise } from '../geometry/noise.js';
import type { Unit } from '../stitches/stitch.js';
import type { Uneven } from './by-hand.js';
import type { IsOnCloth } from './cloth.js';
import type { Laying } from './lay.js';

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
  /** what the row is cut to; not cut when not given */
  readonly cloth?: Cloth;
}

/** Cloth that a row is cut to. */
export interface Cloth {
  readonly allowed: IsOnCloth;
  /** where knots and satins must lie as broad as they are; null where their middles may do */
  readonly broadly: IsOnCloth | null;
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
