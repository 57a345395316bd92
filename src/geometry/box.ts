import type { Point } from './point.js';
import type { Points } from './polyline.js';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box round some lines. */
export function boxOf(lines: readonly Points[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const line of lines) {
    for (let i = 0; i < line.length; i += 2) {
      if (line[i] < left) left = line[i];
      if (line[i] > right) right = line[i];
      if (line[i + 1] < top) top = line[i + 1];
      if (line[i + 1] > bottom) bottom = line[i + 1];
    }
  }
  return { left, top, right, bottom };
}

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;

/** A square about its middle. @param half of its side */
export const squareAt = ([x, y]: Point, half: number): Box => boxAt([x, y], 2 * half, 2 * half);

/** A box about its middle. */
export const boxAt = ([x, y]: Point, width: number, height: number): Box => ({
  left: x - width / 2,
  top: y - height / 2,
  right: x + width / 2,
  bottom: y + height / 2,
});
