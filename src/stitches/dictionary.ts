import type { SavedTreatment } from '../formats/treatment.js';
import type { Ornament, Stitch } from './stitch.js';

/** Everything that can be put on a block, by name: a personal library stands before the built-in one. */
export interface Dictionary {
  readonly stitches: ReadonlyMap<string, Stitch>;
  readonly ornaments: ReadonlyMap<string, Ornament>;
  readonly treatments: ReadonlyMap<string, SavedTreatment>;
}
