import type { Runs } from '../needle/run.js';
import { type Piece, runsFrom, runsOf } from './pieces.js';
import { shortWalk } from './short-walk.js';
import { touching } from './touching.js';

/**
 * Pieces as one color stop, in an order in which the jumps between them are short. Thread that lies over other thread in the
 * order given still does.
 * @param earlier further pieces that have to be sewn before each, all of them before it in the order given
 */
export function walkedPieces(
  pieces: readonly Piece[],
  earlier?: readonly (readonly number[])[],
  effort?: number,
): Runs {
  const touches = touching(pieces);
  const walk = {
    ends: endsOf(pieces),
    earlier: touches.map((near, i) => (earlier ? [...new Set([...near, ...earlier[i]])] : near)),
  };
  const order = shortWalk(walk, { effort });
  return runsFrom(Array.from(order, (piece) => pieces[piece].runs).flat());
}

/** Accents stand along a line: in a mixed block of 48 seams more search than this made no walk over them shorter. */
const ALONG_A_LINE = 0.05;

/** Figures that stand one by one along a line, each a run segment of its own, walked. */
export const walkedFigures = (runs: Runs, width: number): Runs =>
  walkedPieces(
    runsOf(runs).map((run) => ({ runs: [run], width })),
    undefined,
    ALONG_A_LINE,
  );

function endsOf(pieces: readonly Piece[]): Float64Array {
  const ends = new Float64Array(4 * pieces.length);
  pieces.forEach(({ runs }, i) => {
    ends.set(runs[0].subarray(0, 2), 4 * i);
    ends.set(runs[runs.length - 1].subarray(-2), 4 * i + 2);
  });
  return ends;
}
