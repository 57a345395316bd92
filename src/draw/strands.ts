import type { Runs } from '../needle/run.js';
import { bundled } from './bundles.js';
import { sewnPieces } from './pieces.js';
import { body, shadowSide, sheen } from './shade.js';

/** How thread shares its width between the shaded edge, the lit body and the sheen. */
const BODY = 0.72;
const SHEEN = 0.2;
/** How far toward the light, up and to the left, body and sheen sit on the thread, in widths. */
const LIT = 0.07;
/** How far thread casts its shadow on the cloth, in widths. */
const CAST = 0.22;

/** One stroke along a thread: how wide, in what color, and how far to the right of the thread itself, mm. */
export interface Coat {
  readonly color: string;
  readonly width: number;
  readonly aside: number;
  readonly opacity: number;
}

/** The soft shadow that a thread casts on what is below it. */
export const castCoat = (width: number): Coat => ({
  color: '#1b1410',
  width: width * 1.15,
  aside: CAST * width,
  opacity: 0.28,
});

/** Shaded edge, body and sheen of a thread, from below. */
export const threadCoats = (hex: string, width: number): readonly [Coat, Coat, Coat] => [
  { color: shadowSide(hex), width, aside: 0, opacity: 1 },
  { color: body(hex), width: width * BODY, aside: -LIT * width, opacity: 1 },
  { color: sheen(hex), width: width * SHEEN, aside: -2 * LIT * width, opacity: 1 },
];

/** Thread as it is drawn: its points, and run by run where a piece ends and the next, which lies over it, begins. */
export interface Strands {
  readonly xy: Float64Array;
  /** of each run: the first point of each of its pieces, and the last point of all */
  readonly cuts: readonly (readonly number[])[];
}

/** Runs of thread as they lie, cut where they come to lie over themselves; runs of a single hole are left out. */
export function strandsOf(sewn: Runs): Strands {
  const { xy, start } = bundled(sewn);
  const cuts: number[][] = [];
  for (let r = 0; r + 1 < start.length; r++) {
    if (start[r + 1] - start[r] >= 2) cuts.push(sewnPieces(xy, start[r], start[r + 1]));
  }
  return { xy, cuts };
}
