import type { Finding } from '../finding.js';
import type { KeptArea } from '../formats/line-drawing.js';
import type { StitchFile } from '../formats/stitch-file.js';
import type { SeamMap } from './seam-map.js';

/** A block as read: its seam map, and the stitch file it came from if it came from one. */
export interface Block {
  /** base name of the source without its ending */
  readonly name: string;
  readonly map: SeamMap;
  readonly existing: StitchFile | null;
  /** which stops of `existing` are the seams, from 1 */
  readonly stops: readonly number[];
  /** mm: position in the source = position in the block's frame + origin (y down in both) */
  readonly origin: readonly [number, number];
  /** areas that the drawing keeps clear */
  readonly keepClear?: readonly KeptArea[];
  readonly findings: readonly Finding[];
}
