import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
const circle = (radius: number) =>
  Array.from({ length: 721 }, (_, i) => {
    const t = (2 * Math.PI * (i % 720)) / 720;
    return [100 + radius * Math.cos(t), 100 + radius * Math.sin(t)] as const;
  });

const stitches = fc.constantFrom(
  'feather',
  'herringbone',
  'chevron',
  'blanket',
  'cretan',
  'fly',
  'lazy-daisy',
);

describe('a ring', () => {
  test('takes a whole number of repeats with no visible start: turned by one repeat it is itself', () => {
    fc.assert(
      fc.property(stitches, fc.double({ min: 14, max: 60, noNaN: true }), (stitch, radius) => {
        const map = mapOfLines([circle(radius)]);
        // a lone closed line is a ring seam
        expect(map.seams).toHaveLength(1);
        expect(map.seams[0].closed).toBe(true);
        const [{ fit }] = fitLines(map, [askFor(1, stitch)], RULES);
        const [stretch] = fit.stretches;
        expect(stretch.repeats % 1).toBe(0);
        expect(fit.endGap).toEqual([0, 0]);
        expect(chainsOf(fit)[0].closed).toBe(true);
        const points = legPoints(chainsOf(fit));
        const turn = (2 * Math.PI) / stretch.repeats;
        const key = (x: number, y: number) => `${Math.round(x / 0.4)} ${Math.round(y / 0.4)}`;
        const near = new Set<string>();
        for (const [x, y] of points) {
          for (const dx of [-0.4, 0, 0.4]) for (const dy of [-0.4, 0, 0.4]) near.add(key(x + dx, y + dy));
        }
        for (const [x, y] of points) {
          const [px, py] = [x - 100, y - 100];
          const qx = 100 + px * Math.cos(turn) - py * Math.sin(turn);
          const qy = 100 + px * Math.sin(turn) + py * Math.cos(turn);
          expect(near.has(key(qx, qy))).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('too tight at its ends is dressed along both its sides all the same', () => {
    // An ellipse 120 mm by 16 mm: radius of curvature at its ends b^2 / a = 1.07 mm (closed form).
    const flat = Array.from({ length: 721 }, (_, i) => {
      const t = (2 * Math.PI * (i % 720)) / 720;
      return [100 + 60 * Math.cos(t), 100 + 8 * Math.sin(t)] as const;
    });
    const map = mapOfLines([flat]);
    const [{ fit, findings }] = fitLines(map, [askFor(1, 'herringbone')], RULES);
    expect(findings.map(({ code }) => code)).toContain('tight-bend');
    for (const side of [-1, 1]) {
      const xs = legPoints(chainsOf(fit))
        .filter(([, y]) => Math.sign(y - 100) === side)
        .map(([x]) => x)
        .sort((a, b) => a - b);
      expect(xs[0]).toBeLessThan(50);
      expect(xs[xs.length - 1]).toBeGreaterThan(150);
      xs.forEach((x, i) => {
        if (i > 0) expect(x - xs[i - 1]).toBeLessThan(4);
      });
    }
  });

  test('with corners starts at one and takes whole repeats over all sides', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 7 }),
        fc.double({ min: 18, max: 50, noNaN: true }),
        (n, radius) => {
          const polygon = Array.from({ length: n + 1 }, (_, i) => {
            const t = (2 * Math.PI * (i % n)) / n + 0.3;
            return [100 + radius * Math.cos(t), 100 + radius * Math.sin(t)] as const;
          });
          const map = mapOfLines([polygon]);
          const [{ fit }] = fitLines(map, [askFor(1, 'blanket', { sizes: { width: 3, repeat: 3 } })], RULES);
          expect(fit.stretches).toHaveLength(n);
          // regular polygons give equal repeats (closed form)
          expect(new Set(fit.stretches.map(({ repeats }) => repeats)).size).toBe(1);
          expect(chainsOf(fit)).toHaveLength(1);
          expect(chainsOf(fit)[0].closed).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });
});
