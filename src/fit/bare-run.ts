import type { LineIndex } from '../geometry/line-index.js';

/** Thread covers a seam that lies no further from it than this, mm. Common practice. */
export const COVERED = 1.5;
/** A seam is looked at in steps of this, mm. */
export const STEP = 0.25;

/** Distances that differ by less are one, mm. */
const HAIR = 1e-6;
/** Halvings of a step, to less than a thousandth of a millimeter. */
const HALVINGS = 9;

/** A stretch of a line, mm along it. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches of a line between two places that no thread covers, ascending. A covered line is passed in long steps.
 * Cost: the length times the logarithm of the thread.
 *
 * @param at the place so many mm along the line; no two lie further apart than along it
 */
export function bareRuns(
  thread: LineIndex,
  at: (s: number) => readonly [number, number],
  first: number,
  last: number,
  covered = COVERED,
): Run[] {
  const steps = Math.max(1, Math.ceil((last - first) / STEP));
  const step = Math.max(HAIR, (last - first) / steps);
  const runs: Run[] = [];
  let from = Number.NaN;
  for (let k = 0, on = 1; k <= steps; k += on) {
    const s = first + ((last - first) * k) / steps;
    const [x, y] = at(s);
    const away = thread.nearest(x, y, covered);
    const isBare = away > covered;
    if (isBare && Number.isNaN(from)) from = s;
    if (!Number.isNaN(from) && (!isBare || k === steps)) {
      runs.push({ from, to: s });
      from = Number.NaN;
    }
    // thread that is `away` covers the next `covered` - `away` mm for certain
    on = isBare ? 1 : 1 + Math.floor((covered - away) / step);
  }
  return runs;
}

/** The same to a hair, whichever way along the line they are looked for. */
export function exactBareRuns(
  thread: LineIndex,
  at: (s: number) => readonly [number, number],
  first: number,
  last: number,
  covered: number,
): Run[] {
  const isBare = (s: number) => thread.nearest(...at(s), covered) > covered;
  const edge = (bare: number, end: number): number => {
    if (isBare(end)) return end;
    let [inside, outside] = [bare, end];
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (inside + outside) / 2;
      if (isBare(middle)) inside = middle;
      else outside = middle;
    }
    return inside;
  };
  return bareRuns(thread, at, first, last, covered).map(({ from, to }) => ({
    from: edge(from, Math.max(first, from - STEP)),
    // where the run was seen to end, it is covered
    to: edge(Math.max(from, to - STEP), Math.min(last, to)),
  }));
}

/** The longest of them, mm; 0 where there is none. */
export const longest = (runs: readonly Run[]): number =>
  runs.reduce((most, { from, to }) => Math.max(most, to - from), 0);

/** Where thread lies nearest to the line, close behind the end of a bare stretch: no further on than so much, nor than its end. */
export function ledOn(
  thread: LineIndex,
  at: (s: number) => readonly [number, number],
  from: number,
  sense: 1 | -1,
  end: number,
  further = COVERED,
): number {
  let [best, least] = [from, Infinity];
  for (let k = 0; k <= further / STEP; k++) {
    const s = from + sense * k * STEP;
    if (sense * (end - s) < 0) break;
    const away = thread.nearest(...at(s), 2 * further);
    // along thread on the line itself all places are as near: the first
    if (away < least - HAIR) [best, least] = [s, away];
  }
  return best;
}
