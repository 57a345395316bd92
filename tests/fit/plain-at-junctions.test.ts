import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LineAsk } from '../../src/fit/ask.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import type { LineFit } from '../../src/fit/line-fit.js';
import { askFor, chainsOf } from './asks.js';
import { butting, mapOfLines } from './block-of-lines.js';

const RULES = { gap: 0.6, outline: 'trim' } as const;
const slant = fc
  .tuple(fc.double({ min: 25, max: 90, noNaN: true }), fc.boolean())
  .map(([degrees, isOther]) => ((isOther ? 180 - degrees : degrees) * Math.PI) / 180);

/** A seam that butts into another from below, both in the same work. */
function butted(theta: number, stitch: string, more: Partial<LineAsk> = {}): LineFit {
  const map = butting(theta);
  const through = map.junctions[0].through!;
  return fitLines(map, [askFor(through, stitch), askFor(3 - through, stitch, more)], RULES)[1];
}

/** Straight legs on the first 40 mm of the line from (100, 100) at an angle, as [nearest, furthest] mm from that point. */
function linesAlong({ fit }: LineFit, theta: number): [number, number][] {
  const [dx, dy] = [Math.cos(theta), Math.sin(theta)];
  return chainsOf(fit).flatMap(({ kind, path, pathStart }) =>
    kind.flatMap((one, leg) => {
      const points = [...path.subarray(2 * pathStart[leg], 2 * pathStart[leg + 1])];
      const places = Array.from({ length: points.length / 2 }, (_, i) => [
        points[2 * i] - 100,
        points[2 * i + 1] - 100,
      ]);
      const isOn = places.every(([x, y]) => Math.abs(x * dy - y * dx) < 0.02);
      const along = places.map(([x, y]) => x * dx + y * dy);
      const [from, to] = [Math.min(...along), Math.max(...along)];
      return one === 'straight' && isOn && to < 40 ? [[from, to] as [number, number]] : [];
    }),
  );
}

describe('where figures are left out at a junction', () => {
  test('a plain line leads on from the last of them to the junction, and is told', () => {
    let lines = 0;
    fc.assert(
      fc.property(slant, fc.constantFrom('chain', 'zigzag-chain', 'bullion-bars'), (theta, stitch) => {
        const line = butted(theta, stitch);
        const told = line.findings.filter(({ code }) => code === 'plain-line');
        const laid = linesAlong(line, theta);
        expect(laid.length > 0).toBe(told.length > 0);
        if (laid.length === 0) return;
        lines++;
        // it begins at the seam that runs through, and goes on without a break
        laid.sort(([a], [b]) => a - b);
        expect(laid[0][0]).toBeLessThan(0.5);
        laid.slice(1).forEach(([from], i) => {
          expect(from).toBeCloseTo(laid[i][1], 6);
        });
        expect(laid[laid.length - 1][1]).toBeGreaterThan(3);
        expect(laid[laid.length - 1][1]).toBeLessThan(20);
      }),
      { numRuns: 150, seed: 12 },
    );
    expect(lines).toBeGreaterThan(10);
  });

  test('none is laid where ends were asked to stop short', () => {
    fc.assert(
      fc.property(slant, fc.constantFrom('chain', 'zigzag-chain', 'bullion-bars'), (theta, stitch) => {
        expect(linesAlong(butted(theta, stitch, { manner: 'short' }), theta)).toEqual([]);
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  test('none is laid where figures stand as far apart all along', () => {
    const seam = mapOfLines([
      [
        [20, 100],
        [180, 100],
      ],
    ]);
    fc.assert(
      fc.property(fc.double({ min: 3, max: 12, noNaN: true }), (repeat) => {
        const [line] = fitLines(seam, [askFor(1, 'french-knots', { sizes: { repeat } })], RULES);
        expect(line.findings.filter(({ code }) => code === 'plain-line')).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});
