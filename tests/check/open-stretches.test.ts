import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openStretches } from '../../src/check/open-stretches.js';
import { nearestOnSegment } from '../../src/geometry/nearest.js';
import { cumulativeLength, type Points } from '../../src/geometry/polyline.js';

/** A seam that bends, 60 mm long or a little less. */
const seam = fc
  .array(fc.double({ min: -0.4, max: 0.4, noNaN: true }), { minLength: 1, maxLength: 12 })
  .map((turns) => {
    const step = 60 / turns.length;
    const points = [0, 0];
    let heading = 0;
    for (const turn of turns) {
      heading += turn;
      points.push(
        points[points.length - 2] + step * Math.cos(heading),
        points[points.length - 1] + step * Math.sin(heading),
      );
    }
    return Float64Array.from(points);
  });
/** The place so many mm along a line. */
function placeAt(line: Points, at: Float64Array, u: number): [number, number] {
  const i = Math.max(
    1,
    at.findIndex((length) => length >= u),
  );
  const t = (u - at[i - 1]) / (at[i] - at[i - 1]);
  const mix = (k: number) => line[k - 2] + t * (line[k] - line[k - 2]);
  return [mix(2 * i), mix(2 * i + 1)];
}

/** Needle points that follow a seam for a while, as far beside it as a stitch reaches. */
const places = fc.array(
  fc.tuple(fc.double({ min: 0, max: 6, noNaN: true }), fc.double({ min: -4, max: 4, noNaN: true })),
  { minLength: 2, maxLength: 30 },
);

test('what a seam’s own thread may leave open holds every stretch that it does leave open: by looking at each place', () => {
  fc.assert(
    fc.property(seam, places, (line, beside) => {
      const reach = 4;
      const at = cumulativeLength(line);
      const total = at[at.length - 1];
      let u = 0;
      const thread = beside.map(([on, v]) => {
        u = Math.min(total, u + on);
        const [x, y] = placeAt(line, at, u);
        return [x, y + v] as const;
      });
      const runs = { xy: Float64Array.from(thread.flat()), start: Int32Array.of(0, thread.length) };
      const told = openStretches(line, at, [0, total], reach, [runs], 3);
      const isOpen = (along: number) => {
        const place = placeAt(line, at, along);
        return thread.slice(1).every((b, k) => nearestOnSegment(place, thread[k], b).distance > reach);
      };
      const missed: number[] = [];
      let from = 0;
      for (let along = 0; along <= total; along += 0.1) {
        if (!isOpen(along)) from = along + 0.1;
        else if (along - from > 3 && !told.some(([a, b]) => a <= from + 0.1 && b >= along - 0.1))
          missed.push(along);
      }
      expect(missed).toEqual([]);
    }),
    { numRuns: 300 },
  );
});

test('a seam that thread follows closely has nothing open, one without thread all', () => {
  const line = Float64Array.of(0, 0, 50, 0);
  const at = cumulativeLength(line);
  const xy = Float64Array.from({ length: 40 }, (_, i) => (i % 2 ? (i % 4) - 2 : (i / 2) * 2.6));
  const runs = { xy, start: Int32Array.of(0, 20) };
  expect(openStretches(line, at, [0, 50], 3, [runs], 3)).toEqual([]);
  expect(openStretches(line, at, [0, 50], 3, [], 3)).toEqual([[0, 50]]);
});
