import type { Points } from '../geometry/polyline.js';
import type { Runs } from '../needle/run.js';

/** What is sewn from its start to its end without a choice: one run segment, or several in their order. */
export interface Piece {
  readonly runs: readonly Points[];
  /** of its thread as it lies, mm */
  readonly width: number;
}

/** The run segments, one by one. */
export const runsOf = ({ xy, start }: Runs): Points[] =>
  Array.from({ length: start.length - 1 }, (_, r) => xy.subarray(2 * start[r], 2 * start[r + 1])).filter(
    (run) => run.length > 0,
  );

/** Run segments one after another. */
export function runsFrom(runs: readonly Points[]): Runs {
  const start = new Int32Array(runs.length + 1);
  runs.forEach((run, r) => {
    start[r + 1] = start[r] + run.length / 2;
  });
  const xy = new Float64Array(2 * start[runs.length]);
  runs.forEach((run, r) => {
    xy.set(run, 2 * start[r]);
  });
  return { xy, start };
}
