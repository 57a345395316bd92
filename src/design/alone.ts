import { replay } from '../formats/dst-records.js';
import type { StitchPen } from '../formats/stitch-pen.js';
import type { Design } from './design.js';
import { sew } from './sew.js';

/**
 * The new stops of a design without those that came with the block, in a file of the same start and the same extents:
 * many machines center a file by its extents, so that both come to lie alike in the hoop. Where the new stops reach less
 * far than the whole, the frame is first moved, without a stitch, to two corners of the whole.
 */
export function aloneDesign(design: Design): Design {
  const extents = new Extents();
  sew(design, extents);
  return {
    before: null,
    after: null,
    stops: design.stops,
    reach: [extents.left, extents.below, extents.right, extents.above],
    origin: design.origin,
    name: design.name,
  };
}

/** A pen that keeps the furthest places over all records and the start, in steps, y up. */
class Extents implements StitchPen {
  left = 0;
  right = 0;
  below = 0;
  above = 0;
  private x = 0;
  private y = 0;

  stitch(dx: number, dy: number): void {
    this.x += dx;
    this.y += dy;
    this.left = Math.min(this.left, this.x);
    this.right = Math.max(this.right, this.x);
    this.below = Math.min(this.below, this.y);
    this.above = Math.max(this.above, this.y);
  }

  jump(dx: number, dy: number): void {
    this.stitch(dx, dy);
  }

  change(): void {}

  keep(records: Uint8Array): void {
    replay(records, this);
  }
}
