import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineIndex } from '../../src/geometry/line-index.js';
import { nearestOnSegment } from '../../src/geometry/nearest.js';
import { tenths } from './tenths.js';

const coordinate = tenths(0, 60);
const runs = fc
  .array(fc.array(coordinate, { minLength: 4, maxLength: 60 }), { minLength: 1, maxLength: 5 })
  .map((lists) => {
    const even = lists.map((list) => list.slice(0, 2 * (list.length >> 1)));
    const start = [0];
    for (const list of even) start.push(start[start.length - 1] + list.length / 2);
    return { xy: Float64Array.from(even.flat()), start: Int32Array.from(start) };
  });

describe('an index of lines', () => {
  test('tells the same distance as looking at every segment', () => {
    fc.assert(
      fc.property(
        runs,
        coordinate,
        coordinate,
        fc.oneof(tenths(1, 30), fc.constantFrom(0, Number.MIN_VALUE, Number.POSITIVE_INFINITY)),
        (line, x, y, within) => {
          let least = Infinity;
          for (let r = 0; r + 1 < line.start.length; r++) {
            for (let i = line.start[r]; i + 1 < line.start[r + 1]; i++) {
              const a = [line.xy[2 * i], line.xy[2 * i + 1]] as const;
              const b = [line.xy[2 * i + 2], line.xy[2 * i + 3]] as const;
              least = Math.min(least, nearestOnSegment([x, y], a, b).distance);
            }
          }
          const told = lineIndex([line]).distance(x, y, within);
          if (least <= within - 1e-9) expect(told).toBeCloseTo(least, 9);
          else if (least > within + 1e-9) expect(told).toBe(Infinity);
          if (Math.abs(least - within) > 1e-9) expect(lineIndex([line]).nearest(x, y, within)).toBe(told);
        },
      ),
    );
  });
});
