import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cut, onCloth } from '../../src/fit/cloth.js';
import { tenths } from '../geometry/tenths.js';

const spot = fc.tuple(
  fc.double({ min: -50, max: 50, noNaN: true }),
  fc.double({ min: -50, max: 50, noNaN: true }),
);

/** The cloth to one hand of a line that bends a little at the junction it is cut at. */
const cut = fc
  .record({
    bend: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
    inside: fc.double({ min: -3, max: 6, noNaN: true }),
    side: fc.constantFrom(1 as const, -1 as const),
  })
  .map(
    ({ bend, inside, side }): Cut => ({
      line: Float64Array.of(-40, 0, 0, 0, 40 * Math.cos(bend), 40 * Math.sin(bend)),
      side,
      inside,
      at: [0, 0],
      around: 40,
    }),
  );

describe('cloth that a treatment must stay on', () => {
  it('answers the same for a place whatever was asked before', () => {
    fc.assert(
      fc.property(
        fc.array(cut, { minLength: 1, maxLength: 2 }),
        fc.array(spot, { minLength: 2 }),
        (cuts, spots) => {
          const walked = onCloth(cuts);
          for (const [x, y] of spots) expect(walked(x, y)).toBe(onCloth(cuts)(x, y));
        },
      ),
    );
  });

  it('is, beside a bend, to the left of both its legs where it bends to the left, else to the left of either', () => {
    fc.assert(
      fc.property(tenths(-2, 2), tenths(-20, 20), tenths(-20, 20), (bend, x, y) => {
        const [dx, dy] = [Math.cos(bend), Math.sin(bend)];
        const line = Float64Array.of(-40, 0, 0, 0, 40 * dx, 40 * dy);
        const isOn = onCloth([{ line, side: 1, inside: 0, at: [0, 0], around: 30 }]);
        // how far to the left of each leg, y down
        const [first, second] = [-y, x * dy - y * dx];
        fc.pre(Math.abs(first) > 1e-6 && Math.abs(second) > 1e-6);
        expect(isOn(x, y)).toBe(bend < 0 ? first > 0 && second > 0 : first > 0 || second > 0);
      }),
      { numRuns: 500 },
    );
  });

  it('lies to the side asked for, as far from the line as asked, and everywhere far from the junction', () => {
    const above: Cut = { line: Float64Array.of(-40, 0, 40, 0), side: 1, inside: 2, at: [0, 0], around: 30 };
    const isOn = onCloth([above]);
    // y runs down: the left hand of someone walking to the right is above
    expect([isOn(0, -2.1), isOn(0, -1.9), isOn(0, 5), isOn(31, 5)]).toEqual([true, false, false, true]);
  });
});
