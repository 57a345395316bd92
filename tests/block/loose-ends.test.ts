import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';

const frame = [0, 0, 100, 0, 100, 80, 0, 80, 0, 0];
const found = (...lines: number[][]) =>
  buildSeamMap({
    width: 100,
    height: 80,
    origin: [0, 0],
    lines: [frame, ...lines].map((points, i) => ({
      points: Float64Array.from(points),
      closed: i === 0,
      fill: null,
      where: `line ${i + 1}`,
    })),
  }).findings.map(({ code, message }) => ({ code, message }));

describe('ends of seams that are not where they were meant to be', () => {
  test('an end that misses a seam by less than a millimeter is pointed out with the snap that joins it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 35, max: 99 }), (hundredths) => {
        const gap = hundredths / 100;
        const [finding, ...others] = found([0, 40, 100, 40], [50, 0, 50, 40 - gap]);
        expect(others).toEqual([]);
        expect(finding.code).toBe('near-miss');
        expect(finding.message).toContain(`${gap.toFixed(2)} mm short of seam`);
        // the snap it names does join them
        const snap = Number(/--snap ([\d.]+)/.exec(finding.message)![1]);
        expect(snap).toBeGreaterThan(gap);
        expect(snap).toBeLessThan(gap + 0.16);
      }),
    );
  });

  test('so is one that misses the outline, and the end of another seam', () => {
    expect(found([0.6, 40, 100, 40])[0].message).toContain('0.60 mm short of the outline');
    expect(found([0, 40, 49.7, 40], [50.3, 40, 100, 40]).map(({ code }) => code)).toEqual([
      'near-miss',
      'near-miss',
    ]);
  });

  test('an end that goes a little past a seam or the outline is pointed out as that', () => {
    expect(found([0, 40, 100, 40], [50, 0, 50, 41.8])[0].message).toContain('goes 1.8 mm past seam');
    expect(found([0, 40, 102, 40])).toEqual([
      {
        code: 'outside-outline',
        message: expect.stringMatching(
          /\(2\.0 mm\) lies outside the outline; if it is the end of a line drawn past/,
        ),
      },
    ]);
    expect(found([0, 40, 103.5, 40])[0].message).toMatch(/lies outside the outline$/);
  });

  test('a little hook that turns off where two seams meet is a stub, and no seam that fell short', () => {
    const [finding, ...others] = found([0, 40, 100, 40], [50, 0, 50, 40], [50, 40, 51, 40.7]);
    expect(others).toEqual([]);
    expect(finding).toEqual({
      code: 'stub',
      message: expect.stringMatching(/is a stub of 1\.2 mm that ends free/),
    });
  });

  test("ends that meet, and ends that are far from everything, are nobody's concern", () => {
    expect(found([0, 40, 100, 40], [50, 0, 50, 40.2])).toEqual([]);
    expect(found([0, 40, 100, 40], [50, 0, 50, 36])).toEqual([]);
  });
});
