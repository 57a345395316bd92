import type { Seam } from '../block/seam-map.js';
import type { SeamReference, Treatment } from '../formats/dressing.js';
import { firstPoint, lastPoint } from '../geometry/polyline.js';

/** A treatment as it lies on a seam: told in the direction that the seam has now, which may be against the one it was made for. */
export function onSeam<T extends Treatment>(
  treatment: T,
  { ends }: SeamReference,
  seam: Seam | 'outline',
): T {
  return ends && seam !== 'outline' && runsAgainst(seam, ends) ? turnedRound(treatment) : treatment;
}

/** A seam that is redrawn can come to run the other way, wherever it lies and however large it is now. */
function runsAgainst({ points }: Seam, [[ax, ay], [bx, by]]: NonNullable<SeamReference['ends']>): boolean {
  const [[fx, fy], [lx, ly]] = [firstPoint(points), lastPoint(points)];
  return (lx - fx) * (bx - ax) + (ly - fy) * (by - ay) < 0;
}

const OTHER = { left: 'right', right: 'left' } as const;

/** The same work told from the other end of its line: sewn, it lies where it lay. */
export function turnedRound<T extends Treatment>(treatment: T): T {
  const { ends, side, rows, reverse } = treatment;
  return {
    ...treatment,
    ends: ends === null || typeof ends === 'string' ? ends : [ends[1], ends[0]],
    reverse: !reverse,
    // where nobody says to which hand it stands, its rows turn over with it by themselves
    ...(side && { side: OTHER[side], rows: rows.map((row) => ({ ...row, offset: 0 - row.offset })) }),
  };
}
