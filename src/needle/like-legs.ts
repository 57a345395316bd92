import type { ChordsAsked } from './chords.js';
import type { Spine } from './spine.js';

/** Where a curve is divided: arc lengths, of which the first `count` hold. */
export interface Division {
  readonly at: Float64Array;
  readonly count: number;
}

/** What a leg is divided for, beside its shape: mm left out at its start and end, and what is asked of its chords. */
export interface DividedFor {
  readonly skip: number;
  readonly stop: number;
  readonly asked: ChordsAsked;
}

interface Kept extends Division {
  readonly wanted: DividedFor;
  /** arc length, and square of the distance from the first point and from the last, vertex by vertex */
  readonly shape: Float64Array;
}

/** Lengths that differ by less are the same, mm (and mm2). */
const SAME = 1e-6;

/**
 * Remembers how the last leg of each class was divided, for the next leg of the same shape: on a straight seam that is
 * every one. Shapes are told apart by the distances of their vertices along the line and from both its ends, which no
 * turning, shifting or mirroring changes.
 */
export class LikeLegs {
  private last: (Kept | undefined)[] = [];

  /** Forgets all classes. */
  begin(): void {
    this.last = [];
  }

  find(legClass: number, spine: Spine, wanted: DividedFor): Division | null {
    const kept = this.last[legClass];
    return kept && isLike(kept.wanted, wanted) && spine.hasShape(kept.shape, SAME) ? kept : null;
  }

  keep(legClass: number, spine: Spine, wanted: DividedFor, { at, count }: Division): Division {
    const kept = { wanted, at: at.slice(0, count), count, shape: spine.shape() };
    this.last[legClass] = kept;
    return kept;
  }
}

const isLike = (a: DividedFor, b: DividedFor): boolean =>
  a.skip === b.skip &&
  a.stop === b.stop &&
  a.asked.aside === b.asked.aside &&
  a.asked.wanted === b.asked.wanted &&
  a.asked.shortest === b.asked.shortest &&
  a.asked.longest === b.asked.longest;
