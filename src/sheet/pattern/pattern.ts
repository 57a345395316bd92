import type { Frame } from '../../draw/svg.js';
import type { Point } from '../../geometry/point.js';
import type { Points } from '../../geometry/polyline.js';

/**
 * What a line of the pattern shows: a seam or the outline of the block; the line a row is worked on where that is not the
 * seam; thread as a hand lays it; the edges of ribbon; a thing put on by hand.
 */
export type LineKind = 'seam' | 'guide' | 'stitch' | 'ribbon' | 'byHand';

export interface PatternLine {
  readonly kind: LineKind;
  /** closed ones repeat their first point */
  readonly points: Points;
}

/** Upright text in one line about its middle; sizes are those of the letters' body, mm. */
export interface Label {
  readonly text: string;
  readonly at: Point;
  readonly size: number;
}

/** One thing to be worked, in the order in which it is: for the list that goes with the drawing. */
export interface Entry {
  /** '4', 'edge', or '' for an ornament in a patch */
  readonly place: string;
  readonly what: string;
  /** names of threads and how heavy the work is; '' for what is put on by hand */
  readonly thread: string;
}

/** A pattern at actual size: millimeters in the block's frame, y down. */
export interface Pattern {
  readonly name: string;
  /** holds all of it, labels included */
  readonly frame: Frame;
  readonly lines: readonly PatternLine[];
  /** needle points x y x y ..., each once; where a knot sits on one its ring is the mark */
  readonly dots: Points;
  readonly labels: readonly Label[];
  readonly entries: readonly Entry[];
  /** left and right are exchanged, for what is turned over when it is transferred */
  readonly mirrored: boolean;
}

/** Width of a line of text, mm: letters of the faces in use are half as wide as their body is high, or less. */
export const labelWidth = ({ text, size }: Pick<Label, 'text' | 'size'>): number => 0.54 * size * text.length;

/** Half a millimeter of ink on paper is seen on cloth, and covered by any thread. */
export const DOT_RADIUS = 0.28;
