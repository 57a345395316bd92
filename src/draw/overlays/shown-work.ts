import type { SeamMap } from '../../block/seam-map.js';
import type { SewnStitches } from '../../check/density/sewn-stitches.js';
import type { Frame } from '../svg.js';
import type { ShownContrast } from './contrast-stretches.js';

/** A piece of work as overlays are drawn from it. */
export interface ShownWork {
  readonly name: string;
  /** null of a stitch file, in which no seams are known */
  readonly map: SeamMap | null;
  /** of the cloth, mm */
  readonly frame: Frame;
  /** those of the color stops that are shown; other stops have none */
  readonly stitches: SewnStitches;
  /** one for each color stop of the file, in the order of the machine */
  readonly stops: readonly ShownStop[];
  /** stretches of seams that stay bare when all is sewn; null where that is not known */
  readonly bare: readonly BareStretch[] | null;
  /** how the threads show on their fabrics when all is sewn; null where those are not known */
  readonly contrasts: (() => readonly ShownContrast[]) | null;
  /** thread as it looks, of the stops that are shown */
  readonly thread: () => string;
}

export interface ShownStop {
  /** empty where nothing is known of it */
  readonly title: string;
  readonly isShown: boolean;
}

/** A stretch of a line of the block, mm along it. */
export interface BareStretch {
  readonly seam: number | 'outline';
  readonly from: number;
  readonly to: number;
}
