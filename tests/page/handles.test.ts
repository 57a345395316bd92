import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handlePlaces, measureAt, placeAlong, placeBeyond } from '../../page/state/handle-places.js';

const bent = Float64Array.of(0, 0, 30, 0, 30, 40);
const size = fc.double({ min: 1, max: 20, noNaN: true });

describe('handles on a seam', () => {
  it('lie where they mean the measure that the stitch has, wherever else they may stand', () => {
    fc.assert(
      fc.property(size, size, size, (width, repeat, clear) => {
        const { size: sizes, spacing } = handlePlaces(bent, width, repeat, clear);
        for (const { at, on } of sizes) expect(measureAt(on, 'size', at, clear)).toBeCloseTo(width, 6);
        for (const { at, on } of spacing) expect(measureAt(on, 'spacing', at, clear)).toBeCloseTo(repeat, 6);
      }),
    );
  });

  it('find the left hand of someone who walks along the seam on the page', () => {
    // to the right on the page, its left is up, which is against y
    expect(placeAlong(bent, 10)).toEqual({ at: [10, 0], along: [1, 0], left: [0, -1] });
    // down the page, its left is to the right
    expect(placeAlong(bent, 50).left).toEqual([1, -0]);
  });

  it('go straight on beyond its ends where they are meant to', () => {
    expect(placeBeyond(bent, -5).at).toEqual([-5, 0]);
    expect(placeBeyond(bent, 75).at).toEqual([30, 45]);
    expect(placeBeyond(bent, 50).at).toEqual(placeAlong(bent, 50).at);
  });

  it('stay on the seam at its ends', () => {
    expect(placeAlong(bent, -5).at).toEqual([0, 0]);
    expect(placeAlong(bent, 500).at).toEqual([30, 40]);
  });
});
