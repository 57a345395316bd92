import type { LineKind } from './pattern.js';

/** How lines of a pattern are printed: black, so fine that they can be traced and covered by thread, mm. */
export const LOOKS: Readonly<
  Record<LineKind, { readonly width: number; readonly dash?: readonly number[] }>
> = {
  seam: { width: 0.2, dash: [4, 1.2] },
  guide: { width: 0.2, dash: [1, 0.9] },
  ribbon: { width: 0.2, dash: [2.4, 0.7, 0.5, 0.7] },
  stitch: { width: 0.28 },
  byHand: { width: 0.28 },
};

/** What each kind of line is, for the key. */
export const KEY: Readonly<Record<LineKind, string>> = {
  seam: 'seam or outline of the block',
  guide: 'line to work on, where it is not the seam',
  ribbon: 'edge of ribbon or braid, laid first',
  stitch: 'thread as it is seen: a line for each leg, a ring for a knot, petals by their outline',
  byHand: 'bead, button or charm, put on by hand',
};

/** The order in which kinds are drawn and told. */
export const KINDS = ['seam', 'guide', 'ribbon', 'stitch', 'byHand'] as const satisfies readonly LineKind[];
