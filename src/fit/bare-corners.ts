import { frameFinder } from '../geometry/guide-frame.js';
import { shifted } from './band.js';
import { bareOnStraight } from './bare-round.js';
import { bareRuns, COVERED, ledOn, type Run, STEP } from './bare-run.js';
import type { PieceFit } from './fit-pieces.js';
import { type Line, mannerOf } from './lines.js';
import { wholeReach } from './rows.js';
import { threadSeen } from './thread-seen.js';

/** What is bare comes so near to its corner, mm. */
const AT_CORNER = 3;
/** So far to both sides of a corner its seam is looked at, mm. */
const AROUND = 12;

/**
 * What the rows as they lie leave bare about the sharp corners of their line, over so many mm and what they leave
 * bare between repeats anyway: each stretch led on to where thread lies nearest to the line.
 */
export function bareCorners(line: Line, pieces: readonly PieceFit[], over: number): Run[] {
  const { walk, rows, ask } = line;
  const { guide } = walk;
  if (guide.corners.length === 0 || rows.waves) return [];
  const finder = frameFinder(guide, 0, guide.u.length - 1);
  const at = (u: number): readonly [number, number] => {
    finder.at(u);
    return [finder.frame[0], finder.frame[1]];
  };
  const chains = pieces.flatMap(({ laid }) =>
    (laid?.layers ?? []).filter(({ kind }) => kind === 'row').flatMap((layer) => layer.chains),
  );
  const offset = walk.reverse ? -ask.offset : ask.offset;
  const usual = () => {
    const reach = shifted(wholeReach(rows, 1, ask.sized.repeat), offset);
    return bareOnStraight(rows, reach, offset);
  };
  return guide.corners.flatMap(({ u }): Run[] => {
    // where ends stop short, others may have claimed the cloth in the point
    if (mannerOf(line, u) === 'short') return [];
    const thread = threadSeen(chains, { around: { at: at(u), within: AROUND + COVERED } });
    const [first, last] = worked(pieces, u);
    const runs = bareRuns(thread, at, Math.max(first, u - AROUND), Math.min(last, u + AROUND));
    const long = runs.filter(
      ({ from, to }) => to - from > over - STEP && from < u + AT_CORNER && to > u - AT_CORNER,
    );
    return (
      long
        // looked at in steps, a stretch may be a step longer than it seems
        .filter(({ from, to }) => to - from > over + usual() - STEP)
        .map(({ from, to }) => ({
          from: ledOn(thread, at, from, -1, first),
          to: ledOn(thread, at, to, 1, last),
        }))
    );
  });
}

/** What is dressed without a break about a corner: from the start of the piece before it to the end of that behind it. */
function worked(pieces: readonly PieceFit[], u: number): [number, number] {
  const touching = pieces.filter(
    ({ laid, piece }) => laid && piece.start.at < u + 1e-6 && piece.end.at > u - 1e-6,
  );
  const starts = touching.map(({ piece: { start } }) => (start.at < u - 1e-6 ? start.at + start.setback : u));
  const ends = touching.map(({ piece: { end } }) => (end.at > u + 1e-6 ? end.at - end.setback : u));
  return [Math.min(u, ...starts), Math.max(u, ...ends)];
}
