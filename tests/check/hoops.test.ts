import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitIn, HOOPS, smallestHoop } from '../../src/check/hoops.js';

describe('the sewing field for a piece of work', () => {
  test('is the smallest that takes it, upright or turned', () => {
    expect(smallestHoop({ width: 130, height: 180 })).toEqual({
      name: '130 x 180 mm',
      fits: true,
      turned: false,
    });
    expect(smallestHoop({ width: 180, height: 130 })).toEqual({
      name: '130 x 180 mm',
      fits: true,
      turned: true,
    });
    expect(smallestHoop({ width: 90, height: 100 })?.name).toBe('100 x 100 mm');
    expect(smallestHoop({ width: 201, height: 201 })).toBeNull();
  });

  test('takes a turned piece as it takes the same piece upright', () => {
    const mm = fc.double({ min: 1, max: 320, noNaN: true });
    fc.assert(
      fc.property(mm, mm, fc.constantFrom(...HOOPS), (width, height, hoop) => {
        const [upright, turned] = [
          fitIn(hoop, { width, height }),
          fitIn(hoop, { width: height, height: width }),
        ];
        expect(upright.fits).toBe(turned.fits);
      }),
    );
  });
});
