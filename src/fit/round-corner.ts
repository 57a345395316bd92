import type { Reach } from './band.js';
import { bareRound } from './bare-round.js';
import { SHARE_OF_DISC } from './reach.js';
import type { Rows } from './rows.js';

/** Where a rounded corner has room, its radius is the reach over this. */
export const ROUND_SHARE = 0.42;
/** No corner is rounded more tightly, mm: needle points would stand in one place. */
const TIGHTEST = 1.5;
/** A longer bare stretch of a corner wants another remedy, mm. Common practice. */
const BARE_OVER = 3;
/** Between the widest arc and the tightest one so many are tried. */
const ARCS = 3;

/**
 * How wide a treatment of such a reach goes round a corner, mm: so that nothing folds over on the inside, and where the
 * outer strokes still cover the corner itself so wide that the inner ones do not huddle.
 * @param turn radians, positive to the left
 */
export function roundRadius(reach: Reach, turn: number): number {
  const [inner, outer] = turn > 0 ? [reach.left, reach.right] : [reach.right, reach.left];
  const covering = outer / (1 / Math.cos(turn / 2) - 1);
  return Math.max(tightestRadius(reach, turn), Math.min(inner / ROUND_SHARE, covering));
}

const tightestRadius = (reach: Reach, turn: number): number =>
  Math.max(TIGHTEST, (turn > 0 ? reach.left : reach.right) / SHARE_OF_DISC);

/** An arc round a corner, and whether the corner of the seam would lie bare beside it. */
export interface Arc {
  readonly radius: number;
  readonly leavesBare: boolean;
}

/**
 * The widest arc whose outer strokes still cover the corner of the seam; where none does, the one that leaves least of it
 * bare. What goes along or sits on a row would stop at a corner with it: then only one that must lie bare counts.
 */
export function arcRound(rows: Rows, reach: Reach, offset: number, turn: number): Arc {
  const [widest, tightest] = [roundRadius(reach, turn), tightestRadius(reach, turn)];
  const count = widest > tightest + 1e-6 ? ARCS : 1;
  let best = { radius: widest, bare: Infinity };
  for (let k = 0; k < count; k++) {
    const radius = widest + (count > 1 ? ((tightest - widest) * k) / (count - 1) : 0);
    const bare = bareRound(rows, reach, offset, radius, turn);
    if (bare < best.bare) best = { radius, bare };
    if (bare <= BARE_OVER) break;
  }
  const isAlone = rows.followers.length === 0 && rows.accents.length === 0 && rows.laid === 0;
  const least = isAlone ? best.bare : mustLieBare(reach, best.radius, turn);
  return { radius: best.radius, leavesBare: least > BARE_OVER };
}

/**
 * How much of the seam lies bare beside an arc whatever its outer strokes are, mm: an arc of radius r touches both sides
 * r tan(turn / 2) before the corner, and thread that reaches c to its outside covers sqrt(2 r c + c^2) of them.
 */
function mustLieBare(reach: Reach, radius: number, turn: number): number {
  const outer = turn > 0 ? reach.right : reach.left;
  const covered = Math.sqrt(2 * radius * outer + outer * outer);
  return 2 * (radius * Math.tan(Math.abs(turn) / 2) - covered);
}
