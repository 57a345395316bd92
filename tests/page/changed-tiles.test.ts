import fc from 'fast-check';
import { expect, it } from 'vitest';
import { allTiles, changedTiles } from '../../page/draw/changed-tiles.js';

const sides = fc.integer({ min: 1, max: 700 });
const place = fc.double({ min: -200, max: 900, noNaN: true });
const box = fc
  .tuple(
    place,
    place,
    fc.double({ min: 0, max: 300, noNaN: true }),
    fc.double({ min: 0, max: 300, noNaN: true }),
  )
  .map(([left, top, width, height]) => ({ left, top, right: left + width, bottom: top + height }));

it('all tiles cover every dot of the canvas once', () => {
  fc.assert(
    fc.property(sides, sides, (width, height) => {
      const tiles = allTiles(width, height);
      const area = tiles.reduce((sum, tile) => sum + tile.width * tile.height, 0);
      const corners = new Set(tiles.map(({ x, y }) => `${x} ${y}`));
      expect(area).toBe(width * height);
      expect(corners.size).toBe(tiles.length);
    }),
  );
});

it('every dot of a changed box lies in a changed tile, and tiles far from all of them are left alone', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 4 }), sides, sides, (boxes, width, height) => {
      const tiles = changedTiles(boxes, width, height);
      const isMet = (x: number, y: number) =>
        tiles.some((t) => x >= t.x && x < t.x + t.width && y >= t.y && y < t.y + t.height);
      for (const { left, top, right, bottom } of boxes) {
        for (const [x, y] of [
          [left, top],
          [right, bottom],
          [(left + right) / 2, (top + bottom) / 2],
        ]) {
          if (x >= 0 && y >= 0 && x < width && y < height) expect(isMet(x, y)).toBe(true);
        }
      }
      for (const t of tiles) {
        const isNear = boxes.some(
          ({ left, top, right, bottom }) =>
            left < t.x + t.width + 3 && right > t.x - 3 && top < t.y + t.height + 3 && bottom > t.y - 3,
        );
        expect(isNear).toBe(true);
      }
    }),
  );
});

it('what changed outside of the canvas changes nothing on it', () => {
  expect(changedTiles([{ left: -50, top: 10, right: -10, bottom: 20 }], 300, 300)).toEqual([]);
});
