import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { butting, mapOfLines } from './block-of-lines.js';

/** Stitches of loops that hang together, each leading from one unit to the next. */
const LINKED = ['chain', 'zigzag-chain', 'wheatear', 'whipped-chain'];

/** Units of a row that have lost their loop. */
function lost(chains: ReturnType<typeof chainsOf>): number[] {
  const looped = new Set<number>();
  for (const { kind, unit } of chains) {
    kind.forEach((one, leg) => {
      if (one === 'loop') looped.add(unit[leg]);
    });
  }
  return Array.from({ length: chains[0].units }, (_, i) => i).filter((i) => !looped.has(i));
}

// Common practice: a link that is half under other thread makes a lump, and one left out leaves the seam bare.
test('loops that hang together end whole beside the thread that they would tuck under, and not far from it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: Math.PI / 2, noNaN: true }),
      fc.constantFrom(...LINKED),
      fc.constantFrom('herringbone', 'running', 'chain'),
      fc.boolean(),
      (theta, under, over, reverse) => {
        const map = butting(theta);
        const [{ through }] = map.junctions;
        const asks = [askFor(through!, over), askFor(3 - through!, under, { reverse })];
        const fits = fitLines(map, asks, { gap: 0.6, outline: 'free' });
        const own = chainsOf(fits[1].fit);
        expect(lost(own)).toEqual([]);
        const reach = Math.max(...legPoints(chainsOf(fits[0].fit)).map(([, y]) => y)) - 100;
        const first = Math.min(...legPoints(own).map(([, y]) => y)) - 100;
        expect(first).toBeLessThan(reach + 2.6);
      },
    ),
    { numRuns: 80 },
  );
});

test('loops that hang together shrink beside a slanting outline, so that none is left out', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.7, max: Math.PI / 2, noNaN: true }),
      fc.constantFrom(...LINKED),
      fc.boolean(),
      (theta, stitch, mirrored) => {
        const half = (mirrored ? -100 : 100) / Math.tan(theta);
        const map = mapOfLines(
          [
            [
              [0, 0],
              [400, 0],
              [400, 200],
              [0, 200],
              [0, 0],
            ],
            [
              [200 - half, 0],
              [200 + half, 200],
            ],
          ],
          400,
        );
        const [{ fit }] = fitLines(map, [askFor(1, stitch)], { gap: 0.6, outline: 'trim' });
        expect(lost(chainsOf(fit))).toEqual([]);
      },
    ),
    { numRuns: 80 },
  );
});
