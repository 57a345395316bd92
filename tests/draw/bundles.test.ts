import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bundled } from '../../src/draw/bundles.js';

const holes = [
  [0, 0],
  [6, 0],
  [3, 5],
  [-4, 3],
] as const;

/** How far each stitch of a way over holes is drawn to the left of the line from the hole named first to the other. */
function asides(way: readonly number[]): Map<string, number[]> {
  const xy = Float64Array.from(way.flatMap((hole) => [...holes[hole]]));
  const { xy: drawn } = bundled({ xy, start: Int32Array.of(0, way.length) });
  const found = new Map<string, number[]>();
  let at = 0;
  for (let i = 0; i + 1 < way.length; i++) {
    const [a, b] = [way[i], way[i + 1]].sort();
    const [p, q] = [holes[a], holes[b]];
    const [x, y] = [drawn[2 * at + 2], drawn[2 * at + 3]];
    const isStraight = x === holes[way[i + 1]][0] && y === holes[way[i + 1]][1];
    const across = (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]);
    const aside = isStraight ? 0 : across / Math.hypot(q[0] - p[0], q[1] - p[1]);
    found.set(`${a} ${b}`, [...(found.get(`${a} ${b}`) ?? []), aside]);
    // two points lie between the holes of a stitch that is drawn aside
    at += isStraight ? 1 : 3;
  }
  expect(2 * at + 2).toBe(drawn.length);
  return found;
}

describe('stitches between the same two holes', () => {
  it('lie beside one another whichever way they lead, evenly about the line between the holes', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(3), { minLength: 2, maxLength: 12 }), (visits) => {
        const way = visits.filter((hole, i) => hole !== visits[i - 1]);
        for (const list of asides(way).values()) {
          expect(list.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0, 6);
          expect(new Set(list.map((one) => Math.round(one * 1e6) + 0)).size).toBe(list.length);
        }
      }),
    );
  });
});
