import type { Points } from '../geometry/polyline.js';
import type { LegKind } from '../stitches/stitch.js';

/**
 * What the fit of one treated line gives: chains of units laid on the cloth, and the account of how they fit. Plain
 * records and typed arrays only.
 */
export interface SeamFit {
  readonly seam: number | 'outline';
  readonly stitch: string;
  readonly stretches: readonly Stretch[];
  /** in the order they are sewn: what shows where to lay, rows, accents; each is a color stop of its own */
  readonly layers: readonly Layer[];
  /** what is put on by hand afterwards */
  readonly marks: readonly Mark[];
  /** lines that rows are worked on, mm, where these are waves along the treatment's own line or lie beside it */
  readonly guides: readonly Points[];
  /** what became of each of the treatment's rows and accents, in its order; none of rows where nothing was laid */
  readonly rows: readonly RowCount[];
  readonly accents: readonly AccentCount[];
  /** wanted length of a repeat, mm */
  readonly wanted: number;
  /** from the guide line's end to the first needle point, mm; 0 at a free end and on a ring */
  readonly endGap: readonly [number, number];
  /** cloth that it reaches over, mm2 */
  readonly bandMm2: number;
  /** factor by which the width asked for was made smaller; 1 when it was not, null where nothing was laid */
  readonly scale: number | null;
}

/** Repeats of one row, a multiple of 0.5, and the length of line they fill, mm. */
export interface RowCount {
  readonly repeats: number;
  readonly along: number;
}

/** The figures of one accent: how many seats were to get one, and those that do not. */
export interface AccentCount {
  readonly asked: number;
  readonly leftOut: readonly LeftOut[];
}

/** A figure that is left out, where its middle would lie, and why. */
export interface LeftOut {
  readonly at: readonly [number, number];
  readonly why: 'past-end' | 'crowded' | 'on-thread' | 'on-junction';
  /** the line on whose thread it would lie */
  readonly other?: number | 'outline';
}

/** One thread of one row or accent. */
export interface Layer {
  readonly kind: 'placement' | 'row' | 'accent';
  /** which of the treatment's rows, or accents, from 0 */
  readonly index: number;
  /** which of its stitch's threads, from 0 */
  readonly thread: number;
  readonly chains: readonly Chain[];
}

/** A bead, button or charm: marked, not sewn. Middle and radius in mm. */
export interface Mark {
  readonly what: string;
  /** which of the treatment's accents, from 0 */
  readonly index: number;
  readonly at: readonly [number, number];
  readonly radius: number;
}

/** Part of a guide line between corners, ends and breaks, with its whole (or half) repeats. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** a multiple of 0.5 */
  readonly repeats: number;
  readonly ends: readonly [EndKind, EndKind];
  /** the waves that the repeats are worked on, and how long their line is, mm; none on the plain line */
  readonly waves?: { readonly count: number; readonly along: number };
  /** one figure alone in its middle, which does not fill it */
  readonly single?: true;
}

/**
 * What is at the end of a stretch: nothing, the outline, the end of its seam at another, a corner that is turned or
 * broken at, another seam that runs across, or the stretch itself all round. A bend too tight for the treatment, where a
 * stretch breaks off, is a corner to it.
 */
export type EndKind = 'free' | 'outline' | 'junction' | 'corner' | 'crossing' | 'ring';

/**
 * Units one after another on the cloth, joined at shared nodes. Nodes and legs stand unit by unit in the order a hand
 * works them. `xy` positions are mm in the block's frame.
 */
export interface Chain {
  readonly units: number;
  /** the last unit joins the first */
  readonly closed: boolean;
  /** node positions x0 y0 x1 y1 ... */
  readonly nodes: Float64Array;
  /** for each leg: node indices, leg class (see UnitLeg.class), unit it belongs to, visible passes asked for */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly legClass: Uint16Array;
  readonly unit: Int32Array;
  readonly passes: Uint8Array;
  readonly kind: readonly LegKind[];
  readonly size: Float32Array;
  /** path of leg i: points pathStart[i] to pathStart[i + 1] of `path`, from node to node, both included */
  readonly pathStart: Int32Array;
  readonly path: Float64Array;
  /** how a figure stands that may show it by no leg, as a lone knot: direction of its u, and the hand it is turned to */
  readonly facing?: Facing;
}

export interface Facing {
  /** radians */
  readonly theta: number;
  readonly hand: 1 | -1;
}
