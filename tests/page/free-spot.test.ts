import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Round } from '../../page/state/free-place.js';
import { freeSpot } from '../../page/state/free-spot.js';
import { standingOn, withClearPlace, withFigure } from '../../page/state/standing.js';
import type { Dressing } from '../../src/formats/dressing.js';
import type { Placement } from '../../src/geometry/placement.js';

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

it('what was put there stands there at once, also on a block that is turned and made larger', () => {
  const placement: Placement = { scale: 1.5, turn: 30, shift: [12, -4] };
  const figure = { name: 'daisy', title: 'Daisy', threads: 1, size: { default: 14, min: 6, max: 40 } };
  const nothing = { treatments: [], threads: [{}] } as unknown as Dressing;
  const one = withFigure(nothing, figure as never, [60, 70], placement);
  const both = withClearPlace(one, [90, 100], placement);
  const there = standingOn(both, { ornaments: [], placement });
  expect(there.map(({ reach }) => reach)).toEqual([7, 18]);
  for (const [i, at] of [
    [60, 70],
    [90, 100],
  ].entries()) {
    expect(Math.hypot(there[i].at[0] - at[0], there[i].at[1] - at[1])).toBeLessThan(0.15);
  }
  const [a, b, c] = [
    [0, 0],
    [30, 0],
    [0, 10],
  ] as const;
  const shaped = { ...nothing, keepClear: [{ name: 'charm', polygon: [a, b, c] }] } as unknown as Dressing;
  const [shape] = standingOn(shaped, { ornaments: [], placement: { scale: 1, turn: 0, shift: [0, 0] } });
  expect(shape).toEqual({ at: [15, 5], reach: 15 });
});
