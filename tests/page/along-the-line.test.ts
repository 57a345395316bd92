import fc from 'fast-check';
import { expect, it } from 'vitest';
import { acrossOf, alongOf, besideAt, freeAlong, placeAlong } from '../../page/state/handle-places.js';

it('places along a line keep apart and off what stands on it, as long as there is room', () => {
  const mark = fc.double({ min: 0, max: 400, noNaN: true });
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 6 }),
      mark,
      fc.array(mark, { maxLength: 4 }),
      (count, from, taken) => {
        const places = freeAlong(count, from, 36, taken, 28);
        expect(places).toHaveLength(count);
        const free = places.filter((at) => at > 28);
        for (const [i, at] of free.entries()) {
          expect(at).toBeLessThanOrEqual(from);
          if (i > 0) expect(free[i - 1] - at).toBeGreaterThanOrEqual(36 - 1e-9);
          for (const other of taken) expect(Math.abs(other - at)).toBeGreaterThanOrEqual(28 - 1e-9);
        }
      },
    ),
  );
});

it('a place beside a line is told back as so far across it, and nothing along it', () => {
  const line = Float64Array.of(0, 0, 30, 40, 80, 40);
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 99, noNaN: true }),
      fc.double({ min: -20, max: 20, noNaN: true }),
      (u, by) => {
        const on = placeAlong(line, u);
        const at = besideAt(on, by);
        expect(acrossOf(on, at)).toBeCloseTo(by, 9);
        expect(alongOf(on, at)).toBeCloseTo(0, 9);
      },
    ),
  );
});
