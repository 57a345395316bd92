import type { LegKind } from '../stitches/stitch.js';

/**
 * What the fit of one treated line gives: chains of units laid on the cloth, and the account of how they fit. Plain
 * records and typed arrays only.
 */
export interface SeamFit {
  readonly seam: number | 'outline';
  readonly stitch: string;
  readonly stretches: readonly Stretch[];
  readonly chains: readonly Chain[];
  /** wanted length of a repeat, mm */
  readonly wanted: number;
  /** from the guide line's end to the first needle point, mm; 0 at a free end and on a ring */
  readonly endGap: readonly [number, number];
  /** factor by which the width asked for was made smaller; 1 when it was not */
  readonly scale: number;
}

/** Part of a guide line between corners, ends and breaks, with its whole (or half) repeats. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** a multiple of 0.5 */
  readonly repeats: number;
  readonly ends: readonly [EndKind, EndKind];
}

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
}
