import { type LineIndex, lineIndex } from '../geometry/line-index.js';
import type { Chain } from './fit.js';

/** Thread covers a seam that lies no further from it than this, mm. Common practice. */
export const COVERED = 1.5;
/** A seam is looked at in steps of this, mm. */
export const STEP = 0.25;

/** A stretch of a line, mm along it. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches of a line between two places that no thread covers, ascending. Cost: their length times the logarithm of
 * the thread.
 */
export function bareRuns(
  thread: LineIndex,
  at: (s: number) => readonly [number, number],
  first: number,
  last: number,
  covered = COVERED,
): Run[] {
  const steps = Math.max(1, Math.ceil((last - first) / STEP));
  const runs: Run[] = [];
  let from = Number.NaN;
  for (let k = 0; k <= steps; k++) {
    const s = first + ((last - first) * k) / steps;
    const [x, y] = at(s);
    const isBare = thread.nearest(x, y, covered) > covered;
    if (isBare && Number.isNaN(from)) from = s;
    if (!Number.isNaN(from) && (!isBare || k === steps)) {
      runs.push({ from, to: s });
      from = Number.NaN;
    }
  }
  return runs;
}

/** The longest of them, mm; 0 where there is none. */
export const longest = (runs: readonly Run[]): number =>
  runs.reduce((most, { from, to }) => Math.max(most, to - from), 0);

/**
 * What is seen of chains, to be asked how far it is away.
 * @param around only legs that come within so many mm of a place, to both sides of it and up and down
 */
export function threadOf(
  chains: readonly Chain[],
  around?: { readonly at: readonly [number, number]; readonly within: number },
): LineIndex {
  const isNear = (points: Float64Array): boolean => {
    if (!around) return true;
    const { at, within } = around;
    let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let i = 0; i < points.length; i += 2) {
      left = Math.min(left, points[i]);
      right = Math.max(right, points[i]);
      top = Math.min(top, points[i + 1]);
      bottom = Math.max(bottom, points[i + 1]);
    }
    const [x, y] = at;
    return left < x + within && right > x - within && top < y + within && bottom > y - within;
  };
  return lineIndex(
    chains.map(({ kind, path, pathStart }) => {
      const xy: number[] = [];
      const start = [0];
      kind.forEach((own, leg) => {
        const points = path.subarray(2 * pathStart[leg], 2 * pathStart[leg + 1]);
        if (own === 'under' || !isNear(points)) return;
        xy.push(...points);
        // a knot is a line without length
        if (points.length === 2) xy.push(...points);
        start.push(xy.length / 2);
      });
      return { xy: Float64Array.from(xy), start: Int32Array.from(start) };
    }),
  );
}
