import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import type { SeamMap } from '../../src/block/seam-map.js';
import type { LineAsk } from '../../src/fit/ask.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { Memory } from '../../src/fit/memory.js';
import { cutBlock } from '../bench/many-seams.js';
import { askFor } from './asks.js';

/** Wide patches, and such narrow ones that treatments are pressed and made smaller. */
const mapOf = (seed: number, patch = 60): SeamMap => buildSeamMap(cutBlock(2.5 * patch, patch, seed)).map;
const stitch = fc.constantFrom('feather', 'herringbone', 'blanket', 'cretan');
const manner = fc.constantFrom('tuck', 'bevel', 'short');
const patch = fc.constantFrom(18, 30, 60);
const width = fc.double({ min: 6, max: 10, noNaN: true });

/** Changes one after another: which seam, and what it is to get. */
const change = fc.record({
  seam: fc.nat(),
  stitch,
  manner,
  width,
  reverse: fc.boolean(),
  side: fc.boolean(),
});
const changes = fc.array(change, {
  minLength: 1,
  maxLength: 4,
});

const asksFor = (map: SeamMap, manners: 'tuck' | 'bevel' | 'short'): LineAsk[] =>
  map.seams.map(({ id }) => askFor(id, ['feather', 'blanket', 'lazy-daisy'][id % 3], { manner: manners }));

describe('a block fitted anew after a change', () => {
  test('is fitted as it would be without what was known before, change upon change', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), patch, manner, changes, (seed, wide, manners, many) => {
        const map = mapOf(seed, wide);
        const rules = { gap: 0.6, outline: 'trim' } as const;
        const memory = new Memory();
        const asks = asksFor(map, manners);
        fitLines(map, asks, rules, memory);
        for (const change of many) {
          const k = change.seam % asks.length;
          asks[k] = askFor(asks[k].seam, change.stitch, {
            manner: change.manner,
            reverse: change.reverse,
            side: change.side ? 'left' : 'right',
            sizes: { width: change.width },
          });
          const anew = fitLines(map, [...asks], rules);
          expect(isDeepStrictEqual(fitLines(map, [...asks], rules, memory), anew)).toBe(true);
        }
      }),
      { numRuns: 16 },
    );
  });

  test('is fitted from the start under other rules, or where other seams are asked for', () => {
    const map = mapOf(3, 30);
    const memory = new Memory();
    const asks = asksFor(map, 'short');
    for (const [gap, some] of [
      [0.6, asks],
      [1.2, asks],
      [1.2, asks.slice(2)],
      [1.2, [...asks].reverse()],
      [0.6, asks],
    ] as const) {
      const rules = { gap, outline: 'trim' } as const;
      expect(isDeepStrictEqual(fitLines(map, some, rules, memory), fitLines(map, some, rules))).toBe(true);
    }
  });

  test('keeps what a change does not reach, as it is', () => {
    const map = mapOf(1);
    const rules = { gap: 0.6, outline: 'trim' } as const;
    const memory = new Memory();
    const asks = asksFor(map, 'tuck');
    const before = fitLines(map, asks, rules, memory);
    asks[0] = askFor(1, 'feather', { sizes: { width: 5 } });
    const after = fitLines(map, asks, rules, memory);
    const met = new Set(
      map.junctions
        .filter(({ arms }) => arms.some(({ seam }) => seam === 1))
        .flatMap(({ arms }) => arms.map(({ seam }) => seam)),
    );
    expect(after[0]).not.toBe(before[0]);
    const far = asks.flatMap(({ seam }, k) => (met.has(seam) ? [] : [k]));
    expect(far.filter((k) => after[k] === before[k]).length).toBeGreaterThan(far.length / 2);
  });
});
