import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Memory } from '../../src/fit/memory.js';
import { grown, nearLines } from '../../src/fit/near-lines.js';
import { type Box, boxesMeet } from '../../src/geometry/box.js';

const place = fc.double({ min: 0, max: 60, noNaN: true });
const size = fc.double({ min: 0, max: 8, noNaN: true });
const box = fc
  .record({ left: place, top: place, width: size, height: size })
  .map(({ left, top, width, height }): Box => ({ left, top, right: left + width, bottom: top + height }));

/** Every pair looked at. */
const byHand = (boxes: readonly Box[]): number[][] =>
  boxes.map((one, l) => boxes.flatMap((other, o) => (o !== l && boxesMeet(one, other) ? [o] : [])));

/** What is found of boxes of which some are others than the time before. */
function nearNow(memory: Memory, boxes: readonly Box[]): readonly (readonly number[])[] {
  memory.begin([]);
  const lines = memory.each('boxes', boxes.length, boxes.keys(), (l) => boxes[l]);
  return nearLines('near', lines, (one) => one, memory).of;
}

describe('lines near each other', () => {
  test('are those whose boxes meet, found anew where some have moved', () => {
    fc.assert(
      fc.property(
        fc.array(box, { minLength: 1, maxLength: 25 }),
        fc.array(fc.array(fc.tuple(fc.nat(), box), { minLength: 1, maxLength: 3 }), { maxLength: 4 }),
        (first, changes) => {
          const memory = new Memory();
          expect(nearNow(memory, first)).toEqual(byHand(first));
          const now = [...first];
          for (const moved of changes) {
            for (const [k, to] of moved) now[k % now.length] = to;
            expect(nearNow(memory, [...now])).toEqual(byHand(now));
          }
        },
      ),
    );
  });

  test('are found in boxes with room all round', () => {
    expect(grown({ left: 1, top: 2, right: 3, bottom: 4 }, 0.5)).toEqual({
      left: 0.5,
      top: 1.5,
      right: 3.5,
      bottom: 4.5,
    });
  });
});
