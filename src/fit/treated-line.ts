import type { Corner, GuideLine } from '../geometry/guide-line.js';
import type { Manner } from '../formats/dressing.js';
import type { Band, Reach } from './band.js';

/** A line of the block that gets a treatment, before its ends are known. One for the whole seam or outline. */
export interface TreatedLine {
  readonly seam: number | 'outline';
  readonly guide: GuideLine;
  /** corners of the seam, as positions along the guide */
  readonly corners: readonly Corner[];
  /** what the treatment wants to each side, mm, sizes already made smaller where a junction asked for it */
  readonly reach: Reach;
  readonly band: Band;
  readonly manner: Manner;
  /** factor on the sizes asked for, 1 when untouched */
  readonly scale: number;
}
