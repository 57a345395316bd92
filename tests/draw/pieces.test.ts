import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sewnPieces } from '../../src/draw/pieces.js';

const line = (...points: [number, number][]) => new Float64Array(points.flat());
const spot = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }));

/** Whether two stitches cross properly, by the signs of four exact integer areas, and how steeply (sine). */
function crossing(p: number[], q: number[], r: number[], s: number[]): number {
  const area = (a: number[], b: number[], c: number[]) =>
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  if (area(p, q, r) * area(p, q, s) >= 0 || area(r, s, p) * area(r, s, q) >= 0) return 0;
  const [u, v] = [
    [q[0] - p[0], q[1] - p[1]],
    [s[0] - r[0], s[1] - r[1]],
  ];
  return Math.abs(u[0] * v[1] - u[1] * v[0]) / (Math.hypot(u[0], u[1]) * Math.hypot(v[0], v[1]));
}

describe('pieces of sewn thread', () => {
  it('a thread that never crosses itself is one piece', () => {
    expect(sewnPieces(line([0, 0], [3, 1], [6, 0], [9, 1]), 0, 4)).toEqual([0, 3]);
  });

  it('the stitch that goes over an earlier one begins a new piece', () => {
    expect(sewnPieces(line([0, 0], [6, 6], [8, 3], [0, 4], [-2, 2]), 0, 5)).toEqual([0, 2, 4]);
  });

  it('passes there and back along one leg stay together', () => {
    expect(sewnPieces(line([0, 0], [6, 0], [0, 0.2], [6, 0.1], [0, -0.1]), 0, 5)).toEqual([0, 4]);
  });

  it('a long thread is cut at the end of a leg rather than inside a curve', () => {
    const leg = Array.from({ length: 30 }, (_, i): [number, number] => [i, i * i * 0.01]);
    const back = Array.from({ length: 30 }, (_, i): [number, number] => [29 - i, (29 - i) ** 2 * 0.01 + 0.2]);
    expect(sewnPieces(line(...leg, ...back), 0, 60)[1]).toBeGreaterThanOrEqual(29);
    expect(sewnPieces(line(...leg, ...back), 0, 60)[1]).toBeLessThanOrEqual(30);
  });

  /** What holds for any line of needle points. */
  const arePieces = (points: readonly (readonly [number, number])[]): void => {
    const cuts = sewnPieces(line(...points.map(([x, y]): [number, number] => [x, y])), 0, points.length);
    expect(cuts[0]).toBe(0);
    expect(cuts[cuts.length - 1]).toBe(points.length - 1);
    for (let c = 0; c + 1 < cuts.length; c++) {
      expect(cuts[c + 1]).toBeGreaterThan(cuts[c]);
      for (let i = cuts[c]; i < cuts[c + 1]; i++) {
        for (let j = cuts[c]; j < i - 1; j++) {
          const steep = crossing([...points[i]], [...points[i + 1]], [...points[j]], [...points[j + 1]]);
          expect(steep).toBeLessThan(Math.sin((15.1 * Math.PI) / 180));
        }
      }
    }
  };

  it('pieces hold every stitch once, in order, and no steep crossing lies inside one', () => {
    fc.assert(fc.property(fc.array(spot, { minLength: 2, maxLength: 120 }), arePieces));
  });

  it('so of thread that wanders in short stitches', () => {
    const step = fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 }));
    fc.assert(
      fc.property(fc.array(step, { minLength: 12, maxLength: 120 }), (steps) => {
        let [x, y] = [0, 0];
        arePieces(
          steps.map(([dx, dy]) => {
            x += dx;
            y += dy;
            return [x, y];
          }),
        );
      }),
    );
  });
});
