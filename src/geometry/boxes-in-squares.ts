import { type Box, boxesMeet } from './box.js';

/** Boxes with what belongs to them, found by the squares of the plane that they lie in. */
export interface BoxesInSquares<T> {
  put(box: Box, value: T): void;
  /** whether any meets a box */
  meets(box: Box): boolean;
  /** Visits what meets a box, in the order in which it was put there; a large one as often as they share squares. */
  each(box: Box, visit: (value: T) => void): void;
}

/** @param side of a square, in the unit of the boxes: about as large as most of them */
export function boxesInSquares<T>(side: number): BoxesInSquares<T> {
  const squares = new Map<string, { readonly box: Box; readonly value: T }[]>();
  return {
    put(box, value) {
      for (const key of keysOf(box, side)) {
        const there = squares.get(key);
        if (there) there.push({ box, value });
        else squares.set(key, [{ box, value }]);
      }
    },
    meets: (box) =>
      keysOf(box, side).some((key) => squares.get(key)?.some((other) => boxesMeet(box, other.box))),
    each(box, visit) {
      for (const key of keysOf(box, side)) {
        for (const other of squares.get(key) ?? []) if (boxesMeet(box, other.box)) visit(other.value);
      }
    },
  };
}

/** Squares of a side that a box lies in. */
function keysOf({ left, top, right, bottom }: Box, side: number): string[] {
  const keys: string[] = [];
  for (let column = Math.floor(left / side); column <= Math.floor(right / side); column++) {
    for (let row = Math.floor(top / side); row <= Math.floor(bottom / side); row++) {
      keys.push(`${column} ${row}`);
    }
  }
  return keys;
}
