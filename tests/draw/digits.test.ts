import { describe, expect, it } from 'vitest';
import { drawNumber } from '../../src/draw/digits.js';

function extent(value: number) {
  const xs: number[] = [];
  const ys: number[] = [];
  const note = (x: number, y: number) => {
    xs.push(x);
    ys.push(y);
  };
  drawNumber({ move: note, line: note, close: () => {} }, value, 50, 20, 3);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

describe('figures drawn as lines', () => {
  it('stand as high as asked, centered on their spot', () => {
    for (const value of [0, 2, 3, 4, 5, 6, 7, 8, 9, 20, 88, 305]) {
      const { left, right, top, bottom } = extent(value);
      expect([top, bottom]).toEqual([18.5, 21.5]);
      expect((left + right) / 2).toBeCloseTo(50, 1);
    }
  });

  it('no two figures look alike', () => {
    const drawn = Array.from({ length: 10 }, (_, value) => {
      const strokes: string[] = [];
      drawNumber(
        {
          move: (x, y) => strokes.push(`M${x},${y}`),
          line: (x, y) => strokes.push(`${x},${y}`),
          close: () => {},
        },
        value,
        0,
        0,
        6,
      );
      return strokes.join(' ');
    });
    expect(new Set(drawn).size).toBe(10);
  });
});
