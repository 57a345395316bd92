import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bareRuns, exactBareRuns, type Run, STEP } from '../../src/fit/bare-run.js';
import { lineIndex } from '../../src/geometry/line-index.js';
import { tenths } from '../geometry/tenths.js';

const place = fc.tuple(tenths(-5, 45), tenths(-4, 4));
/** Single stitches about a straight seam. */
const stitches = fc.array(fc.tuple(place, place), { maxLength: 12 });
const indexOf = (pairs: readonly (readonly [readonly number[], readonly number[]])[]) =>
  lineIndex(pairs.map(([a, b]) => ({ xy: Float64Array.of(...a, ...b), start: Int32Array.of(0, 2) })));

const seam = (u: number): readonly [number, number] => [u, 0];
// thread just so far away would be covered or not by its last digit
const covered = tenths(0, 4).map((mm) => mm + 0.0371);
const span = fc.tuple(tenths(0, 40), tenths(0, 40));

describe('bare stretches of a seam', () => {
  it('are those that a look at every step finds', () => {
    fc.assert(
      fc.property(stitches, covered, span, (pairs, reach, ends) => {
        const thread = indexOf(pairs);
        const [first, last] = [Math.min(...ends), Math.max(...ends)];
        const steps = Math.max(1, Math.ceil((last - first) / STEP));
        const looks = Array.from({ length: steps + 1 }, (_, k) => {
          const u = first + ((last - first) * k) / steps;
          return { u, isBare: thread.distance(...seam(u), reach) > reach };
        });
        const bare: Run[] = [];
        looks.forEach(({ u, isBare }, k) => {
          if (!isBare) return;
          const isNew = k === 0 || !looks[k - 1].isBare;
          const to = looks[Math.min(k + 1, steps)].u;
          if (isNew) bare.push({ from: u, to });
          else bare[bare.length - 1] = { ...bare[bare.length - 1], to };
        });
        expect(bareRuns(thread, seam, first, last, reach)).toEqual(bare);
      }),
      { numRuns: 500 },
    );
  });

  it('end, measured to a hair, where thread comes within reach', () => {
    fc.assert(
      fc.property(stitches, covered, (pairs, reach) => {
        const thread = indexOf(pairs);
        const away = (u: number) => thread.distance(...seam(u), Infinity);
        for (const { from, to } of exactBareRuns(thread, seam, 0, 40, reach)) {
          if (from > 0) expect(away(from)).toBeCloseTo(reach, 2);
          if (to < 40) expect(away(to)).toBeCloseTo(reach, 2);
          expect(away((from + to) / 2)).toBeGreaterThan(reach - 0.01);
        }
      }),
    );
  });

  it('of no length at all is looked at as well', () => {
    const thread = indexOf([
      [
        [0, 0],
        [10, 0],
      ],
    ]);
    expect(bareRuns(thread, seam, 3, 3, 1)).toEqual([]);
    expect(bareRuns(thread, seam, 20, 20, 1)).toEqual([{ from: 20, to: 20 }]);
  });
});
