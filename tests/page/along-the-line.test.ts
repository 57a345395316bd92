import fc from 'fast-check';
import { expect, it } from 'vitest';
import { acrossOf, alongOf, besideAt, placeAlong } from '../../page/state/handle-places.js';

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
