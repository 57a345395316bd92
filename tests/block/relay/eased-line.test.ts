import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { easedLine } from '../../../src/block/relay/eased-line.js';
import { distance, type Point } from '../../../src/geometry/point.js';

describe('the line that needle points follow', () => {
  test('is straight where they are straight but for machine steps', () => {
    const line = easedLine([
      [0, 0],
      [2.5, 0.1],
      [5, -0.1],
      [7.5, 0],
    ]);
    expect(line.map(([, y]) => y).filter((y) => y !== 0)).toEqual([]);
    expect([line[0], line[line.length - 1]]).toEqual([
      [0, 0],
      [7.5, 0],
    ]);
  });

  test('runs through every one of them, and stays on a circle that they lie on', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 200, noNaN: true }),
        fc.double({ min: 1.5, max: 3.5, noNaN: true }),
        fc.integer({ min: 4, max: 12 }),
        (radius, stitch, count) => {
          const points = Array.from({ length: count + 1 }, (_, i): Point => {
            const angle = (i * stitch) / radius;
            return [radius * Math.cos(angle), radius * Math.sin(angle)];
          });
          const line = easedLine(points);
          const missed = points.map((p) => Math.min(...line.map((q) => distance(p, q))));
          const off = line.map((p) => Math.abs(Math.hypot(...p) - radius));
          // chords would leave it by up to 0.2 mm here (sagitta of the longest stitch on the tightest circle)
          expect(Math.max(...off)).toBeLessThan(0.1 + 1e-9);
          // where they are straight but for machine steps they lie as far beside it, and between two of its points
          expect(Math.max(...missed)).toBeLessThan(0.1 + 0.3);
        },
      ),
    );
  });
});
