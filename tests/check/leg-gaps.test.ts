import { describe, expect, test } from 'vitest';
import { legGaps } from '../../src/check/leg-gaps.js';
import { builtIn } from '../stitches/dictionary.js';

const gaps = (name: string, values = {}) => {
  const stitch = builtIn.stitches.get(name)!;
  return legGaps(stitch.build(values), stitch.symmetry === 'glide');
};

describe('how far apart legs lie', () => {
  // Blanket by Dillmont's figure 171: arms at right angles to the heading, all of a length.
  test('arms of blanket stand about a repeat apart, and two repeats from the next but one', () => {
    const arms = gaps('blanket', { repeat: 4 });
    const [next, nextButOne] = ['', ' but one'].map(
      (more) => arms.get(`"arm" and "arm" of the next repeat${more}`)!,
    );
    // arms lean a little, as a pulled thread does
    expect(next).toBeGreaterThan(3.9);
    expect(next).toBeLessThanOrEqual(4);
    expect(nextButOne - next).toBeCloseTo(4, 1);
  });

  test('legs that meet in a hole lie no distance apart', () => {
    expect(gaps('blanket').get('"arm" and "heading"')).toBeCloseTo(0, 9);
  });

  // Herringbone by Dillmont's figure 39: each stroke crosses the one before.
  test('strokes of herringbone cross the next one, and run beside the next but one', () => {
    const values = { repeat: 8, width: 6, pickUp: 1 };
    const strokes = gaps('herringbone', values);
    expect(strokes.get('"stroke" and "stroke" of the next repeat')).toBe(0);
    // parallels 8 mm apart along the seam that rise 6 mm in 8
    expect(strokes.get('"stroke" and "stroke" of the next repeat but one')).toBeCloseTo(8 * 0.6, 9);
  });
});
