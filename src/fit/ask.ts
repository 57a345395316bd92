import type { Manner } from '../formats/dressing.js';
import type { Sized } from './sized.js';

/** One stitch asked for along one line of the block. */
export interface LineAsk {
  readonly seam: number | 'outline';
  readonly sized: Sized;
  /** hand of the seam that one-sided stitches stand to */
  readonly side: 'left' | 'right';
  readonly reverse: boolean;
  readonly manner: Manner;
  /** through lines that this one stops short of, whatever its manner */
  readonly shortOf: ReadonlySet<number | 'outline'>;
  readonly passes: number;
  /** mm to the left of the seam, seen in the seam's own direction */
  readonly offset: number;
}

export interface FitRules {
  readonly gap: number;
  readonly outline: 'trim' | 'join' | 'free';
}
