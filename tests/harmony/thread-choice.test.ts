import { wcagContrast } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contrast, SEEN } from '../../src/color/contrast.js';
import { PALETTE } from '../../src/harmony/palette.js';
import { meltsIntoBoth, meltsIntoOne, threadOrder, threadsFrom } from '../../src/harmony/thread-choice.js';

const [gold] = PALETTE;
const named = (name: string) => PALETTE.find((thread) => thread.name === name)!;
const between = (left: string | null, right: string | null = left) => ({
  id: 1,
  length: 100,
  wanted: 8,
  fabrics: [{ share: 1, left, right }],
});
const color = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`);

describe('contrast', () => {
  test('is that of the Web Content Accessibility Guidelines, as another library (culori) has it', () => {
    fc.assert(
      fc.property(color, color, (a, b) => {
        // the guidelines' text and later errata part the curve at slightly different values
        expect(contrast(a, b)).toBeCloseTo(wcagContrast(a, b), 2);
      }),
    );
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
  });
});

describe('a thread', () => {
  test('may melt into the fabric on one side of a seam, or on both', () => {
    const on = (left: string | null, right: string | null) => {
      const seam = between(left, right);
      return [meltsIntoOne(gold, seam), meltsIntoBoth(gold, seam)];
    };
    expect(on('#c0a030', '#202020')).toEqual([true, false]);
    expect(on('#c0a030', '#bb9922')).toEqual([true, true]);
    expect(on('#202020', '#f4f0f4')).toEqual([false, false]);
    // along the outline there is cloth on one side alone, and without colors nothing is known
    expect(on('#c0a030', null)).toEqual([true, true]);
    expect(on(null, null)).toEqual([false, false]);
  });
});

describe('the further threads of a figure', () => {
  test('are seen on its fabric: night blue is none for a plum patch, and is one for a white patch', () => {
    const threads = [gold, named('Night blue')];
    expect(threadOrder(threads, -1, between('#4d2a52'), 1)).toEqual([0]);
    expect([...threadOrder(threads, -1, between('#ffffff'), 1)].sort()).toEqual([0, 1]);
  });

  test('are all there are where none is seen, and the own thread of a seam is always first', () => {
    const threads = [named('Black'), named('Night blue')];
    expect([...threadOrder(threads, -1, between('#2a2d38'), 1)].sort()).toEqual([0, 1]);
    expect(threadOrder(threads, 0, between('#202020'), 1)[0]).toBe(0);
    fc.assert(
      fc.property(color, fc.integer({ min: 0, max: 11 }), fc.integer(), (fabric, main, seed) => {
        const order = threadOrder(PALETTE, main, between(fabric), seed);
        expect(order[0]).toBe(main);
        const lost = order.slice(1).filter((k) => contrast(PALETTE[k].hex, fabric) < SEEN);
        // of a dozen threads one shows on any cloth
        expect(lost).toEqual([]);
      }),
    );
  });
});

describe('the threads of a block', () => {
  test('are as many as asked for, each once, old gold or the thread that is wanted first', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer(), color, (count, seed, fabric) => {
        const picked = threadsFrom(count, [between(fabric)], seed);
        expect(picked[0]).toBe(gold);
        expect(new Set(picked.map(({ hex }) => hex)).size).toBe(count);
      }),
    );
    const mine = { name: 'my silk', hex: '#123456', weight: 'No. 40' } as const;
    expect(threadsFrom(2, [], 1, mine)[0]).toBe(mine);
  });
});

describe('threads of a maker', () => {
  const own = [
    { name: 'Soot', hex: '#201c1c', weight: 'No. 30' },
    { name: 'Chalk', hex: '#fbfaf5', weight: 'No. 40' },
    { name: 'Pond', hex: '#3f8078', weight: 'No. 40' },
  ];

  test('stand in for the built-in ones: the first is the one that shows best, and none is the classic', () => {
    expect(threadsFrom(1, [between('#202030')], 1, undefined, own).map(({ name }) => name)).toEqual([
      'Chalk',
    ]);
    expect(threadsFrom(1, [between('#f4f0f4')], 1, undefined, own).map(({ name }) => name)).toEqual(['Soot']);
    const all = threadsFrom(9, [between('#808080')], 1, undefined, own).map(({ name }) => name);
    expect(all.sort()).toEqual(['Chalk', 'Pond', 'Soot']);
  });
});
