import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Chain } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { askFor, chainsOf } from './asks.js';
import { butting } from './block-of-lines.js';

/** How many petals each sprig has. */
function petals(chain: Chain): number[] {
  const halves = new Map<number, number>();
  chain.kind.forEach((kind, leg) => {
    if (kind === 'loop') halves.set(chain.unit[leg], (halves.get(chain.unit[leg]) ?? 0) + 1);
  });
  return [...halves.values()].map((count) => count / 2);
}

// Common practice: a bud of one petal at the end of a line of sprigs reads as a mistake.
test('of a sprig that tucks under other thread two petals or three are left, or none', () => {
  const seen = new Set<number>();
  fc.assert(
    fc.property(
      fc.double({ min: 0.6, max: Math.PI / 2, noNaN: true }),
      fc.constantFrom('feather', 'blanket', 'herringbone'),
      fc.double({ min: 9, max: 12, noNaN: true }),
      (theta, over, repeat) => {
        const map = butting(theta);
        const through = map.junctions[0].through!;
        const daisies = askFor(3 - through, 'lazy-daisy', { sizes: { repeat } });
        const fits = fitLines(map, [askFor(through, over), daisies], { gap: 0.6, outline: 'free' });
        const left = chainsOf(fits[1].fit).flatMap(petals);
        for (const count of left) seen.add(count);
        expect(left.every((count) => count === 2 || count === 3)).toBe(true);
      },
    ),
    { numRuns: 60 },
  );
  expect([...seen].sort()).toEqual([2, 3]);
});

// Common practice: seam allowances lie over each other about a junction, and bulk sewn there may break a needle.
test('knots and cords keep 2 mm off a junction, of the line that runs through and of the one that butts into it', () => {
  let bulky = 0;
  fc.assert(
    fc.property(
      fc.double({ min: 0.6, max: Math.PI / 2, noNaN: true }),
      fc.constantFrom('coral', 'french-knots', 'bullion-bars', 'knotted-blanket'),
      fc.constantFrom('coral', 'french-knots', 'bullion-bars', 'herringbone'),
      fc.constantFrom('tuck' as const, 'short' as const, 'bevel' as const),
      (theta, over, under, manner) => {
        const map = butting(theta);
        const [{ at, through }] = map.junctions;
        const asks = [askFor(through!, over, { manner }), askFor(3 - through!, under, { manner })];
        const fits = fitLines(map, asks, { gap: 0.6, outline: 'free' });
        const near: string[] = [];
        for (const { kind, size, path, pathStart } of fits.flatMap(({ fit }) => chainsOf(fit))) {
          for (let leg = 0; leg < kind.length; leg++) {
            if (kind[leg] !== 'knot' && kind[leg] !== 'cord') continue;
            bulky++;
            for (let i = pathStart[leg]; i < pathStart[leg + 1]; i++) {
              const away = Math.hypot(path[2 * i] - at[0], path[2 * i + 1] - at[1]) - size[leg] / 2;
              if (away < 2 - 1e-5) near.push(`${kind[leg]} ${away.toFixed(2)} mm off`);
            }
          }
        }
        expect(near).toEqual([]);
      },
    ),
    { numRuns: 40 },
  );
  expect(bulky).toBeGreaterThan(500);
});
