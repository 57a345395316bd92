import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import { askFor, legPoints } from './asks.js';
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
        expect(fit.chains[0].closed).toBe(true);
        const points = legPoints(fit.chains);
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
          expect(fit.chains).toHaveLength(1);
          expect(fit.chains[0].closed).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });
});
