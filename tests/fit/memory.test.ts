import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import type { SeamMap } from '../../src/block/seam-map.js';
import type { LineAsk } from '../../src/fit/ask.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { Memory } from '../../src/fit/memory.js';
import { cutBlock } from '../bench/many-seams.js';
import { askFor } from './asks.js';

const mapOf = (seed: number): SeamMap => buildSeamMap(cutBlock(150, 60, seed)).map;
const stitch = fc.constantFrom('feather', 'herringbone', 'blanket', 'cretan');
const manner = fc.constantFrom('tuck', 'bevel', 'short');
const width = fc.double({ min: 6, max: 10, noNaN: true });

/** Changes one after another: which seam, and what it is to get. */
const changes = fc.array(fc.record({ seam: fc.nat(), stitch, manner, width, reverse: fc.boolean() }), {
  minLength: 1,
  maxLength: 4,
});

const asksFor = (map: SeamMap, manners: 'tuck' | 'bevel' | 'short'): LineAsk[] =>
  map.seams.map(({ id }) => askFor(id, ['feather', 'blanket', 'lazy-daisy'][id % 3], { manner: manners }));

describe('a block fitted anew after a change', () => {
  test('is fitted as it would be without what was known before, change upon change', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), manner, changes, (seed, manners, many) => {
        const map = mapOf(seed);
        const rules = { gap: 0.6, outline: 'trim' } as const;
        const memory = new Memory();
        const asks = asksFor(map, manners);
        fitLines(map, asks, rules, memory);
        for (const change of many) {
          const k = change.seam % asks.length;
          asks[k] = askFor(asks[k].seam, change.stitch, {
            manner: change.manner,
            reverse: change.reverse,
            sizes: { width: change.width },
          });
          expect(fitLines(map, [...asks], rules, memory)).toEqual(fitLines(map, asks, rules));
        }
      }),
      { numRuns: 12 },
    );
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
