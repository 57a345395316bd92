import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Round } from '../../page/state/free-place.js';
import { freeSpot } from '../../page/state/free-spot.js';

const block = { width: 130, height: 180 };
const place = fc.tuple(
  fc.double({ min: 0, max: 130, noNaN: true }),
  fc.double({ min: 0, max: 180, noNaN: true }),
);

it('what is put on the block lies where it is meant where nothing is, and on nothing else where there is room', () => {
  expect(freeSpot([65, 90], 12, [], block)).toEqual([65, 90]);
  fc.assert(
    fc.property(place, fc.array(place, { maxLength: 2 }), (meant, others) => {
      const there = others.map((at): Round => ({ at, reach: 12 }));
      const [x, y] = freeSpot(meant, 12, there, block);
      // two others take less than the rings reach
      for (const { at } of there) expect(Math.hypot(x - at[0], y - at[1])).toBeGreaterThanOrEqual(24);
      expect([x >= 12, y >= 12, x <= 118, y <= 168]).toEqual([true, true, true, true]);
    }),
  );
});

it('what finds no room on a small block lies where it is meant', () => {
  expect(freeSpot([5, 5], 12, [], { width: 10, height: 10 })).toEqual([5, 5]);
});
