import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
const KINK = [100, 100] as const;

/** Two sides of 60 mm that meet in a kink too slight for a corner. */
const kinked = (degrees: number) => {
  const turn = (degrees * Math.PI) / 180;
  return mapOfLines([[[40, 100], KINK, [100 + 60 * Math.cos(turn), 100 - 60 * Math.sin(turn)]]]);
};

const kinks = fc.record({
  degrees: fc.double({ min: 4, max: 24.5, noNaN: true }),
  left: fc.boolean(),
  stitch: fc.constantFrom('blanket', 'feather', 'herringbone', 'cretan', 'fly', 'chevron', 'single-feather'),
  width: fc.double({ min: 8, max: 16, noNaN: true }),
});

test('a slight kink presses no stitch, however wide: it is gone round at full size, hardly off the seam', () => {
  const pressed: string[] = [];
  fc.assert(
    fc.property(kinks, ({ degrees, left, stitch, width }) => {
      const map = kinked(left ? degrees : -degrees);
      expect(map.seams[0].corners).toEqual([]);
      const [{ fit, findings }] = fitLines(map, [askFor(1, stitch, { sizes: { width } })], RULES);
      const what = `${stitch} ${width.toFixed(1)} mm wide at ${degrees.toFixed(1)} degrees`;
      if (findings.length > 0 || fit.scale! < 1 - 1e-9)
        pressed.push(`${what}: ${findings.map(({ code }) => code)}`);
      // Closed form: an arc of radius r lies r (1 / cos(tau / 2) - 1) inside its corner, at most 24 mm by 0.024 here times
      // the reach over 10 mm; so needle points near the kink stay within the reach and that of the sides.
      const turn = ((left ? 1 : -1) * degrees * Math.PI) / 180;
      const reach = width;
      const inside = (reach / 0.42) * (1 / Math.cos(turn / 2) - 1);
      for (const [x, y] of legPoints(chainsOf(fit))) {
        const first = Math.abs(y - 100);
        const second = Math.abs((x - 100) * Math.sin(turn) + (y - 100) * Math.cos(turn));
        if (Math.min(first, second) > reach + inside + 0.3)
          pressed.push(`${what}: ${first.toFixed(2)} mm off`);
      }
    }),
    { numRuns: 120 },
  );
  expect(pressed).toEqual([]);
});
