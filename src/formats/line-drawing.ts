import type { Finding } from '../finding.js';
import type { Area } from '../geometry/area.js';
import type { Points } from '../geometry/polyline.js';

/** One line of a block as drawn or as recovered from stitches, before lines are joined into a seam map. */
export interface DrawnLine {
  /** dense flattened polyline, mm in the block's frame; a closed one repeats its first point */
  readonly points: Points;
  readonly closed: boolean;
  /** '#rrggbb' when the shape is a filled patch, else null */
  readonly fill: string | null;
  /** what the fill covers, where that is not simply the inside of this line */
  readonly area?: Area;
  /** where it came from, for messages: "panel.svg line 12 (path)" */
  readonly where: string;
  /** a line sewn later has a greater number; none for a drawn one */
  readonly sewn?: number;
}

/** A part of the cloth that stays clear of the dressing: a monogram, a photo, a charm. */
export interface KeptArea {
  readonly name: string;
  /** mm in the block's frame */
  readonly area: Area;
}

/** A block as lines: what a drawing gives and what sewn stops give, and what the seam map is made from. */
export interface LineDrawing {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly DrawnLine[];
  /** how far the block's frame is from the source's own origin, mm: source = frame + origin (stitch files) */
  readonly origin: readonly [number, number];
  readonly keepClear?: readonly KeptArea[];
  /** what the source holds that is not read as it is meant there */
  readonly findings?: readonly Finding[];
}
