import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrast } from '../../src/color/contrast.js';

/**
 * Figures that the W3C prints in its Web Content Accessibility Guidelines 2.1: understanding/21/non-text-contrast,
 * techniques G195, G207, G223 and G183. It prints one decimal, here cut off and there rounded, so a tenth is allowed.
 */
const printed = [
  ['#949494', '#ffffff', 3],
  ['#9d9d9d', '#ffffff', 2.7],
  ['#aaaaaa', '#ffffff', 2.3],
  ['#fff000', '#ffffff', 1.2],
  ['#e5e5e5', '#6221ea', 5.6],
  ['#e3660e', '#ffffff', 3.4],
  ['#ff3838', '#ffffff', 3.6],
  ['#ca0000', '#ffffff', 6],
  ['#3366cc', '#000000', 3.9],
] as const;

/** Working examples of the same guidelines: link-contrast. */
const justOverThree = ['#3333ff', '#5e5e00', '#5a5a5a'];

const color = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`);

describe('contrast of two colors', () => {
  it('is what the W3C prints for its examples', () => {
    const wrong = printed.filter(([a, b, ratio]) => Math.abs(contrast(a, b) - ratio) >= 0.1);
    expect(wrong).toEqual([]);
  });

  it('passes three to one where the W3C says so', () => {
    const ratios = justOverThree.map((hex) => contrast(hex, '#000000'));
    expect(ratios.filter((ratio) => ratio <= 3 || ratio > 3.1)).toEqual([]);
  });

  // davidmacd.com/test/check-color.html records the consensus of the working group: 4.499 is not 4.5
  it('tells the two grays on either side of 4.5 to 1 apart, unrounded', () => {
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.478, 3);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.542, 3);
  });

  it('goes from 1 to 21', () => {
    expect(contrast('#000000', '#ffffff')).toBe(21);
    fc.assert(fc.property(color, color, (a, b) => contrast(a, b) >= 1 && contrast(a, b) <= 21));
  });

  it('is the same both ways', () => {
    fc.assert(fc.property(color, color, (a, b) => contrast(a, b) === contrast(b, a)));
  });
});
