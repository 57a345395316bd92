import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { onlyStops, runsOfStop } from '../../../src/check/density/runs-of-stop.js';
import type { SewnStitches } from '../../../src/check/density/sewn-stitches.js';

const steps = fc.integer({ min: 0, max: 30 }).map((n) => n / 10);
const run = fc.array(fc.tuple(steps, steps), { minLength: 2, maxLength: 6 });
const works = fc.array(fc.array(run, { maxLength: 4 }), { minLength: 1, maxLength: 5 });

function sewn(work: readonly (readonly (readonly (readonly [number, number])[])[])[]): SewnStitches {
  const ends: number[] = [];
  const stops = work.map((runs) => {
    const from = ends.length / 4;
    for (const points of runs) {
      ends.push(...points.slice(1).flatMap((to, i) => [...points[i], ...to]));
    }
    return { from, to: ends.length / 4, width: 0.4 };
  });
  return { ends: Float64Array.from(ends), stops };
}

describe('stitches taken stop by stop', () => {
  test('as runs are the same stitches, in no more runs than were sewn', () => {
    fc.assert(
      fc.property(works, (work) => {
        const stitches = sewn(work);
        work.forEach((runs, stop) => {
          const { xy, start } = runsOfStop(stitches, stop);
          expect(start.length - 1).toBeLessThanOrEqual(runs.length);
          const again: number[] = [];
          for (let r = 0; r + 1 < start.length; r++) {
            for (let i = start[r]; i + 1 < start[r + 1]; i++) again.push(...xy.subarray(2 * i, 2 * i + 4));
          }
          const { from, to } = stitches.stops[stop];
          expect(again).toEqual([...stitches.ends.subarray(4 * from, 4 * to)]);
        });
      }),
    );
  });

  test('some alone are as if the others had never been sewn, and keep their numbers', () => {
    fc.assert(
      fc.property(works, fc.func(fc.boolean()), (work, isWanted) => {
        const wanted = new Set(work.flatMap((_, i) => (isWanted(i) ? [i + 1] : [])));
        const expected = sewn(work.map((runs, i) => (wanted.has(i + 1) ? runs : [])));
        const { ends, stops } = onlyStops(sewn(work), wanted);
        expect([...ends]).toEqual([...expected.ends]);
        expect(stops).toEqual(expected.stops);
      }),
    );
  });
});
