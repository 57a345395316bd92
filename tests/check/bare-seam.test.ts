import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bareSeam } from '../../src/check/bare-seam.js';
import { mapOfLines } from '../fit/block-of-lines.js';

const map = mapOfLines([
  [
    [20, 100],
    [120, 100],
  ],
]);
const line = { seam: 1, reach: 3, short: false };
/** Thread along the seam from a to b, v mm beside it. */
const thread = (a: number, b: number, v = 0) => ({
  xy: Float64Array.of(20 + a, 100 + v, 20 + (a + b) / 2, 100 + v, 20 + b, 100 + v),
  start: Int32Array.of(0, 3),
});

describe('bare seam', () => {
  test('is what lies further from thread than the treatment reaches: hand-computed gaps', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 0.5, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 2.9, noNaN: true }),
        (at, gap, beside) => {
          // Thread that lies `beside` the seam covers sqrt(reach^2 - beside^2) past its end.
          const covers = Math.sqrt(9 - beside * beside);
          const bare = gap - 2 * covers;
          const found = bareSeam(map, [line], [thread(0, at, beside), thread(at + gap, 100, beside)]);
          if (bare > 3.6) {
            expect(found).toHaveLength(1);
            const told = Number(/([\d.]+) mm/.exec(found[0].message)![1]);
            expect(Math.abs(told - bare)).toBeLessThan(0.6);
            expect(found[0].level).toBe(told > 6 ? 'warning' : 'note');
            expect(Math.abs(found[0].at![0] - (20 + at + gap / 2))).toBeLessThan(0.6);
          }
          if (bare < 2.4) expect(found).toEqual([]);
        },
      ),
    );
  });

  test('a line asked to stop short is at most noted', () => {
    const found = bareSeam(map, [{ ...line, short: true }], [thread(0, 40)]);
    expect(found.map(({ level }) => level)).toEqual(['note']);
  });

  test('is not told again beside an area that is kept clear, nor between two of them', () => {
    const square = (left: number, right: number) =>
      ({
        name: 'charm',
        area: {
          rings: [Float64Array.of(left, 90, right, 90, right, 110, left, 110, left, 90)],
          rule: 'nonzero',
        },
      }) as const;
    const threads = [thread(0, 20), thread(80, 100)];
    const told = (...areas: ReturnType<typeof square>[]) => bareSeam(map, [line], threads, areas).length;
    // the seam runs from x = 20 to 120, and is bare from 43 to 97
    expect(told()).toBe(1);
    expect(told(square(50, 90))).toBe(0);
    expect(told(square(46, 60), square(80, 94))).toBe(0);
    expect(told(square(100, 140)), 'beyond its thread').toBe(0);
    expect(told(square(130, 140)), 'further on').toBe(1);
  });

  test('a seam with no thread at all is bare from end to end', () => {
    const [found] = bareSeam(map, [line], []);
    expect(found.message).toContain('100.0 mm');
  });
});
