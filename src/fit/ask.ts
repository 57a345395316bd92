import type { KeptArea } from '../formats/line-drawing.js';
import type { AccentAsk } from './accents.js';
import type { Uneven } from './by-hand.js';
import type { MannerAsk } from './manner.js';
import type { Sized } from './sized.js';
import type { Waves } from './waves.js';

/** What is asked for along one line of the block: a first row, which sets the step, and what keeps to it. */
export interface LineAsk {
  readonly seam: number | 'outline';
  readonly sized: Sized;
  /** hand of the seam that one-sided stitches stand to */
  readonly side: 'left' | 'right';
  readonly reverse: boolean;
  readonly manner: MannerAsk;
  /** through lines that this one stops short of, whatever its manner */
  readonly shortOf: ReadonlySet<number | 'outline'>;
  readonly passes: number;
  /** mm to the left of the seam, seen in the seam's own direction */
  readonly offset: number;
  readonly followers: readonly FollowerAsk[];
  readonly accents: readonly AccentAsk[];
  /** width of what is laid along the line by hand, mm; 0 for nothing */
  readonly laid: number;
  readonly uneven?: Uneven;
  /** areas that the treatment stays clear of */
  readonly keepClear?: readonly KeptArea[];
  /** what is stitched on instead of the line itself */
  readonly waves?: Waves;
  /** the maker has it go round its corners, also where that leaves them bare */
  readonly keepsRound?: boolean;
}

/** A further row, seen in the seam's own direction; see Follower. */
export interface FollowerAsk {
  readonly sized: Sized;
  readonly side: 'left' | 'right';
  readonly passes: number;
  readonly offset: number;
  readonly times: number;
  readonly step: number;
  readonly mirrored: boolean;
}

export interface FitRules {
  readonly gap: number;
  readonly outline: 'trim' | 'join' | 'free';
}
