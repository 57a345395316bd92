import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { differenceCiede2000 } from 'culori';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadDifference } from '../../src/color/difference.js';

// Sharma, Wu, Dalal 2005: all 34 pairs of their supplementary test data; the file names its source.
const reference = join(import.meta.dirname, '..', 'reference', 'ciede2000-pairs.json');
const { pairs } = JSON.parse(readFileSync(reference, 'utf8')) as { pairs: number[][] };

const color = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`);

describe('the difference of two colors', () => {
  it('is CIEDE2000: the library in use gives the 34 published pairs to four decimals', () => {
    const between = differenceCiede2000();
    const wrong = pairs.filter(([l1, a1, b1, l2, a2, b2, published]) => {
      const found = between({ mode: 'lab65', l: l1, a: a1, b: b1 }, { mode: 'lab65', l: l2, a: a2, b: b2 });
      return Math.abs(found - published) > 0.00005;
    });
    expect(pairs).toHaveLength(34);
    expect(wrong).toEqual([]);
  });

  it('of two colors on a screen is that very formula', async () => {
    const [difference, between] = [await loadDifference(), differenceCiede2000()];
    fc.assert(fc.property(color, color, (a, b) => Math.abs(difference(a, b) - between(a, b)) < 1e-6));
  });

  it('is 100 from black to white, and nothing from a color to itself', async () => {
    const difference = await loadDifference();
    expect(difference('#000000', '#ffffff')).toBeCloseTo(100, 3);
    fc.assert(fc.property(color, (a) => difference(a, a) === 0));
  });

  it('is the same both ways', async () => {
    const difference = await loadDifference();
    fc.assert(fc.property(color, color, (a, b) => difference(a, b) === difference(b, a)));
  });

  it('tells a word that is no color', async () => {
    const difference = await loadDifference();
    expect(() => difference('#zzzzzz', '#000000')).toThrow(/no color/);
  });
});
