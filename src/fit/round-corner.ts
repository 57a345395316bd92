import type { Reach } from './band.js';
import { bareRound } from './bare-round.js';
import { COVERED } from './bare-run.js';
import { SHARE_OF_DISC } from './reach.js';
import { type Rows, wholeReach } from './rows.js';

/** Where a rounded corner has room, its radius is the reach over this. */
export const ROUND_SHARE = 0.42;
/** No corner is rounded more tightly, mm: needle points would stand in one place. */
const TIGHTEST = 1.5;
/** A longer bare stretch of a corner wants another remedy, mm. Common practice. */
const BARE_OVER = 3;
/** Flowers beside a row may be pressed to this share of their reach inside a bend: to less, all of the line is made smaller. */
const PRESSED = 0.6;
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
 * bare. What goes along or sits on a row would stop at a corner with it: then only what lies further from thread than the rows reach
 * counts as bare, and the arc may be as tight as the rows alone can take.
 */
export function arcRound(rows: Rows, reach: Reach, offset: number, turn: number): Arc {
  const isAlone = rows.followers.length === 0 && rows.accents.length === 0 && rows.laid === 0;
  const own = isAlone ? reach : wholeReach({ ...rows, accents: [] }, 1, rows.sized.repeat);
  const widest = roundRadius(reach, turn);
  const tightest = Math.max(tightestRadius(own, turn), PRESSED * tightestRadius(reach, turn));
  const covered = isAlone ? COVERED : Math.max(own.left, own.right);
  const count = widest > tightest + 1e-6 ? ARCS : 1;
  let best = { radius: widest, bare: Infinity };
  for (let k = 0; k < count; k++) {
    const radius = widest + (count > 1 ? ((tightest - widest) * k) / (count - 1) : 0);
    const bare = bareRound(rows, reach, offset, radius, turn, covered);
    if (bare < best.bare) best = { radius, bare };
    if (bare <= BARE_OVER) break;
  }
  return { radius: best.radius, leavesBare: best.bare > BARE_OVER };
}
