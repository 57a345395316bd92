import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Box } from '../../src/sheet/page.js';
import { platePlaces } from '../../src/sheet/plate-places.js';

const meet = (a: Box, b: Box) =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

test('plates that want the same place stand side by side, none over another, none far from it', () => {
  const plates = Array.from({ length: 12 }, () => ({ at: [50, 50] as const, width: 8, height: 3.4 }));
  const boxes = platePlaces(plates, []);
  expect(boxes[0]).toMatchObject({ x: 46, y: 48.3 });
  expect(boxes.filter((box, i) => boxes.slice(0, i).some((other) => meet(box, other)))).toEqual([]);
  expect(boxes.filter(({ x, y }) => Math.hypot(x - 46, y - 48.3) > 20)).toEqual([]);
});

test('a plate with room stays where it is wanted', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }))),
      (cells) => {
        const apart = [...new Map(cells.map((cell) => [cell.join(), cell])).values()];
        const plates = apart.map(([x, y]) => ({ at: [x * 20, y * 20] as const, width: 8, height: 3.4 }));
        const boxes = platePlaces(plates, []);
        expect(boxes.map(({ x, y }) => [x + 4, y + 1.7])).toEqual(plates.map(({ at }) => [...at]));
      },
    ),
  );
});
