import type { Design } from './design.js';
import { extentsOf } from './extents.js';

/**
 * The new stops of a design without those that came with the block, in a file of the same start and the same extents:
 * many machines center a file by its extents, so that both come to lie alike in the hoop. Where the new stops reach less
 * far than the whole, the frame is first moved, without a stitch, to two corners of the whole.
 */
export function aloneDesign(design: Design): Design {
  const { left, below, right, above } = extentsOf(design);
  return {
    before: null,
    after: null,
    stops: design.stops,
    reach: [left, below, right, above],
    origin: design.origin,
    name: design.name,
  };
}
