import type { Reach } from './band.js';
import { SHARE_OF_DISC } from './reach.js';

/** Where a rounded corner has room, its radius is the reach over this. */
export const ROUND_SHARE = 0.42;
/** No corner is rounded more tightly, mm: needle points would stand in one place. */
const TIGHTEST = 1.5;
/** A longer bare stretch of a corner wants another remedy, mm. Common practice. */
const BARE_OVER = 3;

/**
 * How wide a treatment of such a reach goes round a corner, mm: so that nothing folds over on the inside, and where the
 * outer strokes still cover the corner itself so wide that the inner ones do not huddle.
 * @param turn radians, positive to the left
 */
export function roundRadius(reach: Reach, turn: number): number {
  const [inner, outer] = turn > 0 ? [reach.left, reach.right] : [reach.right, reach.left];
  const covering = outer / (1 / Math.cos(turn / 2) - 1);
  return Math.max(TIGHTEST, inner / SHARE_OF_DISC, Math.min(inner / ROUND_SHARE, covering));
}

/**
 * Whether the corner of the seam would lie bare where a treatment goes round it: an arc of radius r touches both sides
 * r tan(turn / 2) before the corner, and thread that reaches c to its outside covers sqrt(2 r c + c^2) of them.
 */
export function leavesBare(reach: Reach, turn: number): boolean {
  const radius = roundRadius(reach, turn);
  const outer = turn > 0 ? reach.right : reach.left;
  const covered = Math.sqrt(2 * radius * outer + outer * outer);
  return 2 * (radius * Math.tan(Math.abs(turn) / 2) - covered) > BARE_OVER;
}
