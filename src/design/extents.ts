import { replay } from '../formats/dst-records.js';
import type { StitchPen } from '../formats/stitch-pen.js';
import type { Design } from './design.js';
import { sew } from './sew.js';

/** How far a stitch file reaches from its start, over all records and the start itself: steps, y up. */
export interface Extents {
  readonly left: number;
  readonly right: number;
  readonly below: number;
  readonly above: number;
}

/** The extents of a design's file, as machines see them that center a design by these. */
export function extentsOf(design: Design): Extents {
  const pen = new ReachPen();
  sew(design, pen);
  return pen;
}

/** A pen that keeps the furthest places. */
class ReachPen implements StitchPen {
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
