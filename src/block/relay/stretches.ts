import { findCorners } from '../../geometry/corners.js';
import { distance, type Point } from '../../geometry/point.js';
import { cumulativeLength, fromPoints } from '../../geometry/polyline.js';
import { TIE } from '../sewn-passes.js';
import { turnAt } from '../stop-kinds.js';

/** A stitch that turns back more than this goes back over the line. */
const REVERSAL = (135 * Math.PI) / 180;
/** Beside a tie a stitch shorter than this share of the longest one is the tie's last. */
const SHORT_SHARE = 0.6;

/** Plain stitches between two places that the needle has to come down on: ends, corners, places where it turns back. */
export interface Stretch {
  readonly points: readonly Point[];
  /** three short stitches that hold the thread, or what else is too short to be a line */
  readonly isTie: boolean;
  /** a stitch of a tie at the start, and at the end: not counted among the stretch's own */
  readonly tieAt: readonly [boolean, boolean];
}

/** A line of plain stitches cut at ends, corners and reversals; ties are told apart. */
export function stretchesOf(line: readonly Point[]): Stretch[] {
  const cuts = cutsOf(line);
  const raw = cuts.slice(1).map((to, k) => line.slice(cuts[k], to + 1));
  const turnsBack = (i: number) => i > 0 && i < line.length - 1 && Math.abs(turnAt(line, i)) > REVERSAL;
  const ties = raw.map(
    (points, k) => lengthOf(points) < TIE && (turnsBack(cuts[k]) || turnsBack(cuts[k + 1])),
  );
  return raw.map((points, k) => {
    const longest = Math.max(...points.slice(1).map((p, i) => distance(points[i], p)));
    const isShort = (i: number) => {
      const stitch = distance(points[i], points[i + 1]);
      return points.length > 2 && stitch < TIE && stitch < SHORT_SHARE * longest;
    };
    const atStart = !ties[k] && Boolean(ties[k - 1]) && isShort(0);
    const atEnd = !ties[k] && Boolean(ties[k + 1]) && isShort(points.length - 2);
    return { points, isTie: ties[k], tieAt: [atStart, atEnd] };
  });
}

/** Places in a line where the needle has to come down, from its first to its last. */
function cutsOf(line: readonly Point[]): number[] {
  const last = line.length - 1;
  const points = fromPoints(line);
  const at = cumulativeLength(points);
  const corners = new Set(findCorners(points, false).map(({ u }) => u));
  const cuts = [0];
  for (let i = 1; i < last; i++) {
    if (corners.has(at[i]) || Math.abs(turnAt(line, i)) > REVERSAL) cuts.push(i);
  }
  return [...cuts, last];
}

const lengthOf = (points: readonly Point[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + distance(points[i], p), 0);
