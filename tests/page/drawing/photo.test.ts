import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scaledBy, turnedAbout } from '../../../page/state/drawing/photo-placement.js';
import { lengthOfText, lengthText } from '../../../page/state/units.js';
import { placedPoint, unplacedPoint } from '../../../src/geometry/placement.js';
import { distance } from '../../../src/geometry/point.js';
import type { LengthUnit } from '../../../src/geometry/units.js';

const px = fc.integer({ min: 0, max: 2400 });
const spot = fc.tuple(px, px);
const placement = fc.record({
  scale: fc.double({ min: 0.02, max: 2, noNaN: true }),
  turn: fc.double({ min: -180, max: 180, noNaN: true }),
  shift: fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 })),
});
const apart = fc
  .tuple(spot, spot)
  .filter(([a, b]) => distance(a, b) >= 100)
  .map(([a, b]) => ({ a, b }));

describe('a photo behind the drawing', () => {
  it('is true to 0.1 mm once two points are said to be so far apart, in inches or millimeters; the first stays', () => {
    fc.assert(
      fc.property(
        placement,
        apart,
        fc.double({ min: 20, max: 400, noNaN: true }),
        fc.constantFrom<LengthUnit>('mm', 'inch'),
        (lies, { a, b }, mm, unit) => {
          // as typed: two places of a millimeter, three of an inch
          const after = scaledBy(lies, a, b, lengthOfText(lengthText(mm, unit), unit));
          const measured = distance(placedPoint(a, after), placedPoint(b, after));
          expect(Math.abs(measured - mm)).toBeLessThan(0.1);
          expect(distance(placedPoint(a, after), placedPoint(a, lies))).toBeLessThan(1e-6);
          expect(after.turn).toBe(lies.turn);
        },
      ),
    );
  });

  it('says 8 1/2 inches as 8.5 and a comma as a point: 215.9 mm (an inch is 25.4 mm)', () => {
    expect(lengthOfText('8.5', 'inch')).toBeCloseTo(215.9, 9);
    expect(lengthOfText('215,9', 'mm')).toBeCloseTo(215.9, 9);
  });

  it('is turned about a place, which stays, as do all distances', () => {
    fc.assert(
      fc.property(
        placement,
        apart,
        fc.double({ min: -180, max: 180, noNaN: true }),
        (lies, { a, b }, turn) => {
          const middle = [75, 90] as const;
          const after = turnedAbout(lies, turn, middle);
          expect(distance(unplacedPoint(middle, after), unplacedPoint(middle, lies))).toBeLessThan(1e-5);
          const [was, is] = [lies, after].map((one) => distance(placedPoint(a, one), placedPoint(b, one)));
          expect(Math.abs(is - was)).toBeLessThan(1e-6);
        },
      ),
    );
  });
});
