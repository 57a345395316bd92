import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import { askFor, chainsOf } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

/** Stitches whose figures stand apart, each in the middle of its repeat, with nothing between them that is seen. */
const APART = ['ermine', 'sheaf', 'star-stitch'];

// Common practice: a row is set in the middle of its seam.
test('a row of figures that stand apart leaves as much of a seam bare before the first as behind the last', () => {
  fc.assert(
    fc.property(fc.constantFrom(...APART), fc.double({ min: 12, max: 90, noNaN: true }), (stitch, length) => {
      const map = mapOfLines([
        [
          [100, 100],
          [100 + length, 100],
        ],
      ]);
      const [{ fit }] = fitLines(map, [askFor(1, stitch)], { gap: 0.6, outline: 'free' });
      let [first, last] = [Infinity, -Infinity];
      for (const { kind, path, pathStart } of chainsOf(fit)) {
        kind.forEach((one, leg) => {
          if (one === 'under') return;
          for (let k = pathStart[leg]; k < pathStart[leg + 1]; k++) {
            first = Math.min(first, path[2 * k] - 100);
            last = Math.max(last, path[2 * k] - 100);
          }
        });
      }
      expect(Math.abs(first - (length - last))).toBeLessThan(0.05);
    }),
  );
});
