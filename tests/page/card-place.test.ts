import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cardPlace } from '../../page/state/card-place.js';

const card = { width: 370, height: 290 };
const table = { width: 890, height: 610 };
const place = fc.tuple(fc.integer({ min: 0, max: 890 }), fc.integer({ min: 0, max: 610 }));

it('a card lies on the table, whatever it is beside', () => {
  fc.assert(
    fc.property(place, fc.array(place, { maxLength: 20 }), (at, worked) => {
      const { left, top } = cardPlace(at, card, table, 84, worked);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(top).toBeGreaterThanOrEqual(0);
      expect(left + card.width).toBeLessThanOrEqual(table.width);
      expect(top + card.height).toBeLessThanOrEqual(table.height);
    }),
  );
});

it('covers neither its place nor the seam that is worked, where the table has room beside them', () => {
  // the seam leads to the right of the place, then down, up, and to the left
  const ways = [
    [1, 0],
    [0, 1],
    [0, -1],
    [-1, 0],
  ] as const;
  const wide = { width: 1400, height: 1000 };
  for (const [dx, dy] of ways) {
    const seam = Array.from({ length: 20 }, (_, i) => [700 + 15 * i * dx, 500 + 15 * i * dy] as const);
    const { left, top } = cardPlace([700, 500], card, wide, 84, seam);
    const covered = seam.filter(
      ([x, y]) => x > left && x < left + card.width && y > top && y < top + card.height,
    );
    expect(covered).toEqual([]);
  }
});

it('where no side has room covers the seam rather than the place itself', () => {
  const narrow = { width: 684, height: 516 };
  const seam = Array.from({ length: 24 }, (_, i) => [342, 20 + 20 * i] as const);
  const { left, top } = cardPlace([342, 258], { width: 370, height: 216 }, narrow, 84, seam);
  const isCovered = 342 > left && 342 < left + 370 && 258 > top && 258 < top + 216;
  expect(isCovered).toBe(false);
});
