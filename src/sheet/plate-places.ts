import type { Point } from '../geometry/point.js';
import type { Box } from './page.js';

/** Something to be put near a place, mm of paper. */
export interface Plate {
  readonly at: Point;
  readonly width: number;
  readonly height: number;
}

/** Clear paper between two plates, mm. */
const BETWEEN = 0.8;
/** Steps that a plate is moved by at most, in plates. */
const FURTHEST = 4;

/**
 * Boxes of plates, each about its place where that is free, else moved aside by as little as leaves it clear of those
 * before it and of what is taken already. Where there is no room near, it stays.
 */
export function platePlaces(plates: readonly Plate[], taken: readonly Box[]): Box[] {
  const boxes: Box[] = [];
  for (const { at, width, height } of plates) {
    const tries = ASIDE.map(
      ([across, down]): Box => ({
        x: at[0] - width / 2 + (across * (width + BETWEEN)) / 2,
        y: at[1] - height / 2 + (down * (height + BETWEEN)) / 2,
        width,
        height,
      }),
    );
    const isFree = (box: Box) =>
      !boxes.some((other) => meet(box, other)) && !taken.some((other) => meet(box, other));
    boxes.push(tries.find(isFree) ?? tries[0]);
  }
  return boxes;
}

/** Moves aside in half plates, the shortest first; a plate is about twice as wide as it is high. */
const ASIDE: readonly Point[] = Array.from(
  { length: (2 * FURTHEST + 1) ** 2 },
  (_, i): Point => [(i % (2 * FURTHEST + 1)) - FURTHEST, Math.floor(i / (2 * FURTHEST + 1)) - FURTHEST],
).sort((a, b) => Math.hypot(2 * a[0], a[1]) - Math.hypot(2 * b[0], b[1]) || a[1] - b[1] || a[0] - b[0]);

const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width + BETWEEN / 2 &&
  b.x < a.x + a.width + BETWEEN / 2 &&
  a.y < b.y + b.height + BETWEEN / 2 &&
  b.y < a.y + a.height + BETWEEN / 2;
