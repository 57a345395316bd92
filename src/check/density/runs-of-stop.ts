import type { Runs } from '../../needle/run.js';
import type { SewnStitches } from './sewn-stitches.js';

/** The stitches of one color stop, from 0, as runs: a run ends where the next stitch begins elsewhere. */
export function runsOfStop({ ends, stops }: SewnStitches, stop: number): Runs {
  const { from, to } = stops[stop];
  const xy: number[] = [];
  const start: number[] = [];
  for (let i = from; i < to; i++) {
    const at = 4 * i;
    const isNew = i === from || ends[at] !== ends[at - 2] || ends[at + 1] !== ends[at - 1];
    if (isNew) {
      start.push(xy.length / 2);
      xy.push(ends[at], ends[at + 1]);
    }
    xy.push(ends[at + 2], ends[at + 3]);
  }
  start.push(xy.length / 2);
  return { xy: Float64Array.from(xy), start: Int32Array.from(start) };
}

/** What is left of a piece of work when only some of its color stops, from 1, are sewn; the others keep their numbers. */
export function onlyStops({ ends, stops }: SewnStitches, wanted: ReadonlySet<number>): SewnStitches {
  const kept = stops.map((stop, i) => (wanted.has(i + 1) ? stop : { ...stop, to: stop.from }));
  const count = kept.reduce((sum, { from, to }) => sum + to - from, 0);
  const left = new Float64Array(4 * count);
  let at = 0;
  const moved = kept.map(({ from, to, width }) => {
    left.set(ends.subarray(4 * from, 4 * to), 4 * at);
    const begins = at;
    at += to - from;
    return { from: begins, to: at, width };
  });
  return { ends: left, stops: moved };
}
