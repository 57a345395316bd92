import fc from 'fast-check';
import type { Design, Stop } from '../../src/design/design.js';
import { toRecords } from '../../src/design/write-design.js';
import { littleRecord } from '../formats/little-dst.js';

export type Run = readonly (readonly [number, number])[];

export function stop(runs: readonly Run[], title = 'stop 1'): Stop {
  const start = [0];
  for (const run of runs) start.push(start[start.length - 1] + run.length);
  return {
    title,
    kind: 'treatment',
    seams: [1],
    thread: { name: 'old gold', hex: '#b8860b', weight: 'No. 40' },
    runs: { xy: Float64Array.from(runs.flat(2)), start: Int32Array.from(start) },
  };
}

/** A design that begins a new file, from runs by color stop. */
export function designOf(
  stops: readonly (readonly Run[])[],
  origin: readonly [number, number] = [0, 0],
): Design {
  return {
    before: null,
    after: null,
    stops: stops.map((runs, i) => stop(runs, `stop ${i + 1}`)),
    origin,
    name: 'apron',
  };
}

/** One letter a record: stitch, jump, change. */
export function kinds(design: Design): string {
  const records = toRecords(design);
  let letters = '';
  for (let at = 0; at < records.length; at += 3) letters += littleRecord(records, at).kind[0];
  return letters;
}

const mm = fc.double({ min: 0, max: 130, noNaN: true });
const near = fc.double({ min: -9, max: 9, noNaN: true });
/** Runs as they are sewn: a start anywhere, then stitches of up to 9 mm along each axis, some of no length. */
export const runArbitrary: fc.Arbitrary<Run> = fc
  .tuple(
    fc.tuple(mm, mm),
    fc.array(fc.oneof(fc.tuple(near, near), fc.constant<[number, number]>([0, 0])), {
      minLength: 1,
      maxLength: 12,
    }),
  )
  .map(([start, moves]) => {
    const run: [number, number][] = [start];
    for (const [dx, dy] of moves) {
      const [x, y] = run[run.length - 1];
      run.push([x + dx, y + dy]);
    }
    return run;
  });
export const designArbitrary = fc.record({
  runs: fc.array(fc.array(runArbitrary, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 5 }),
  origin: fc.tuple(fc.constantFrom(-65, -65.05, 0, 12.3), fc.constantFrom(-90, -90.05, 0, 0.07)),
});
