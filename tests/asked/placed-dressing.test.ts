import { expect, test } from 'vitest';
import { placedDressing, unplacedDressing } from '../../src/asked/placed-dressing.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { apron } from '../formats/dressings.js';

const figure = { parameters: {}, thread: 0, passes: 3 };
const dressing: Dressing = {
  ...apron,
  ornaments: [
    { ornament: 'daisy', at: [10, 20], turn: 30, ...figure },
    { ornament: 'daisy', patch: { at: [5, 5] }, turn: 'fit', ...figure },
    { ornament: 'daisy', patch: 2, ...figure },
  ],
  keepClear: [
    { name: 'photo', circle: { at: [10, 10], radius: 4 } },
    {
      name: 'name',
      polygon: [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
    },
  ],
  bare: [
    {
      id: 3,
      middle: [1, 2],
      ends: [
        [0, 0],
        [2, 4],
      ],
    },
  ],
};
const placement = { scale: 2, turn: 90, shift: [0, 100] } as const;

test('the places of a dressing lie where its block lies; ornaments turn with it, and only what is kept clear grows', () => {
  const { ornaments, keepClear, bare, treatments } = placedDressing(dressing, placement);
  // a quarter turn counterclockwise takes right to up: (x, y) comes to (2 y, 100 - 2 x)
  expect(ornaments?.map(({ at, patch, turn }) => [at ?? patch, turn])).toEqual([
    [[40, 80], 120],
    [{ at: [10, 90] }, 'fit'],
    [2, 90],
  ]);
  expect(keepClear?.[0].circle).toEqual({ at: [20, 80], radius: 8 });
  expect(keepClear?.[1].polygon).toEqual([
    [0, 100],
    [0, 98],
    [2, 100],
  ]);
  expect(bare?.[0].middle).toEqual([4, 98]);
  expect(treatments[0].seam.middle).toEqual([81, 40]);
  expect(treatments[0].rows).toEqual(dressing.treatments[0].rows);
});

test('and lie on the block as drawn again when that is taken back', () => {
  const back = unplacedDressing(placedDressing(dressing, placement), placement);
  expect(back.treatments).toEqual(dressing.treatments);
  expect(back.keepClear).toEqual(dressing.keepClear);
  expect(back.bare).toEqual(dressing.bare);
  expect(back.ornaments?.map(({ at, patch }) => at ?? patch)).toEqual([[10, 20], { at: [5, 5] }, 2]);
  expect(placedDressing(dressing, { scale: 1, turn: 0, shift: [0, 0] })).toBe(dressing);
});
