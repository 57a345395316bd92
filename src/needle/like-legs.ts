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

/** How the last leg of a class was divided; its arrays serve the next one. */
interface Kept extends Division {
  wanted: DividedFor;
  at: Float64Array;
  count: number;
  /** see Spine.shape */
  shape: Float64Array;
  /** vertices of the leg */
  vertices: number;
}

/** Lengths that differ by less are the same, mm (and mm2). */
const SAME = 1e-6;

/**
 * Remembers how the last leg of each class was divided, for the next leg of the same shape: on a straight seam that is
 * every one. Shapes are told apart by the distances of their vertices along the line and from both its ends, which no
 * turning, shifting or mirroring changes.
 */
export class LikeLegs {
  private readonly last: Kept[] = [];
  /** by class, whether anything is known of it */
  private readonly isKnown: boolean[] = [];

  /** Forgets all classes. */
  begin(): void {
    this.isKnown.fill(false);
  }

  find(legClass: number, spine: Spine, wanted: DividedFor): Division | null {
    if (!this.isKnown[legClass]) return null;
    const kept = this.last[legClass];
    const isSame =
      kept.vertices === spine.n && isLike(kept.wanted, wanted) && spine.hasShape(kept.shape, SAME);
    return isSame ? kept : null;
  }

  /** What is given back holds until the next leg of the class is kept. */
  keep(legClass: number, spine: Spine, wanted: DividedFor, { at, count }: Division): Division {
    this.last[legClass] ??= { wanted, at: NONE, count, shape: NONE, vertices: 0 };
    const kept = this.last[legClass];
    this.isKnown[legClass] = true;
    if (kept.at.length < count) kept.at = new Float64Array(2 * count);
    for (let i = 0; i < count; i++) kept.at[i] = at[i];
    if (kept.shape.length < 3 * spine.n) kept.shape = new Float64Array(6 * spine.n);
    spine.shape(kept.shape);
    kept.wanted = wanted;
    kept.count = count;
    kept.vertices = spine.n;
    return kept;
  }
}

const NONE = new Float64Array(0);

const isLike = (a: DividedFor, b: DividedFor): boolean =>
  a.skip === b.skip &&
  a.stop === b.stop &&
  a.asked.aside === b.asked.aside &&
  a.asked.wanted === b.asked.wanted &&
  a.asked.shortest === b.asked.shortest &&
  a.asked.longest === b.asked.longest;
