import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Chosen, choosing, freest, type Round } from '../../page/state/free-place.js';

const place = fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 }));
const places = fc.array(place, { minLength: 1, maxLength: 12 });
const there = fc.array(
  place.map((at): Round => ({ at, reach: 13 })),
  { maxLength: 6 },
);
const gap = ([x, y]: readonly [number, number], { at, reach }: Round): number =>
  Math.hypot(x - at[0], y - at[1]) - reach;

describe('what stands on a seam', () => {
  it('takes the first place where it touches nothing, and the one farthest from all where there is none', () => {
    fc.assert(
      fc.property(places, there, (all, marks) => {
        const nth = freest(all, 17, marks);
        const clears = all.map((at) => Math.min(Infinity, ...marks.map((mark) => gap(at, mark))));
        const free = clears.findIndex((clear) => clear >= 17);
        if (free >= 0) expect(nth).toBe(free);
        else expect(clears[nth]).toBe(Math.max(...clears));
      }),
    );
  });

  it('keeps off all that was placed before it, as long as there is room', () => {
    const wide = Array.from({ length: 40 }, (_, i) => ({ at: [20 * i, 0] as const }));
    fc.assert(
      fc.property(there, fc.integer({ min: 1, max: 5 }), (marks, count) => {
        const choose = choosing(marks, { isHeld: false, nth: new Map() });
        const stand = Array.from({ length: count }, (_, i) => choose(`${i}`, wide, 17).at);
        for (const [i, at] of stand.entries()) {
          const others = stand.slice(0, i).map((one): Round => ({ at: one, reach: 17 }));
          expect(
            Math.min(Infinity, ...[...others, ...marks].map((one) => gap(at, one))),
          ).toBeGreaterThanOrEqual(17);
        }
      }),
    );
  });

  it('is as long as its parts: a label keeps off with both its ends', () => {
    const parts = [
      [-60, 0],
      [0, 0],
      [60, 0],
    ] as const;
    const mark: Round = { at: [60, 0], reach: 13 };
    expect(freest([[0, 0]], 15, [mark], parts)).toBe(0);
    expect(
      freest(
        [
          [0, 0],
          [0, 40],
        ],
        15,
        [mark],
        parts,
      ),
    ).toBe(1);
  });

  it('stays where it is while something is held, and is placed anew afterwards', () => {
    const two = [{ at: [0, 0] as const }, { at: [100, 0] as const }];
    const near: Round[] = [{ at: [5, 0], reach: 13 }];
    const before: Chosen = { isHeld: false, nth: new Map() };
    expect(choosing([], before)('size', two, 17)).toBe(two[0]);
    before.isHeld = true;
    expect(choosing(near, before)('size', two, 17)).toBe(two[0]);
    before.isHeld = false;
    expect(choosing(near, before)('size', two, 17)).toBe(two[1]);
  });

  it('is not in its own way when it is placed once more', () => {
    const two = [{ at: [0, 0] as const }, { at: [100, 0] as const }];
    const choose = choosing([], { isHeld: false, nth: new Map() });
    expect(choose('size', two, 17)).toBe(choose('size', two, 17));
  });
});
