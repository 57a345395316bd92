import type { Piece } from './pieces.js';

/** Side of a cell, mm: at least as wide as the heaviest thread and half a step. */
const CELL = 1;
/** A stitch is looked at in steps of at most this, mm. */
const STEP = 0.3;
/** Cells to either side of the block's origin; a stitch file reaches 10 m. */
const CELLS = 2 ** 15;

/**
 * For each piece those before it whose thread comes so near that one lies over the other: what is sewn later lies on top.
 * Pieces count as near when their thread, as wide as it lies, comes into one cell of 1 mm, so that some are told that are a
 * millimeter and a half apart, and none that touches is missed. Of many in one place each is told the one just before it.
 * Linear in the thread.
 */
export function touching(pieces: readonly Piece[]): number[][] {
  const lastIn = new Map<number, number>();
  return pieces.map(({ runs, width }, piece) => {
    const earlier = new Set<number>();
    const enter = (cell: number) => {
      const last = lastIn.get(cell);
      if (last === piece) return;
      if (last !== undefined) earlier.add(last);
      lastIn.set(cell, piece);
    };
    const around = (width + STEP) / 2;
    let before = Number.NaN;
    const mark = (x: number, y: number) => {
      const left = Math.floor((x - around) / CELL);
      const top = Math.floor((y - around) / CELL);
      const right = Math.floor((x + around) / CELL);
      const bottom = Math.floor((y + around) / CELL);
      const place = cellAt(left, top) * 4 + (right - left) * 2 + (bottom - top);
      if (place === before) return;
      before = place;
      enter(cellAt(left, top));
      if (right > left) enter(cellAt(right, top));
      if (bottom > top) enter(cellAt(left, bottom));
      if (right > left && bottom > top) enter(cellAt(right, bottom));
    };
    for (const run of runs) {
      for (let i = 0; i + 3 < run.length; i += 2) {
        const dx = run[i + 2] - run[i];
        const dy = run[i + 3] - run[i + 1];
        const steps = Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy) / STEP));
        for (let s = 0; s <= steps; s++) mark(run[i] + (dx * s) / steps, run[i + 1] + (dy * s) / steps);
      }
    }
    return [...earlier].sort((a, b) => a - b);
  });
}

const cellAt = (x: number, y: number): number => (x + CELLS) * 2 * CELLS + (y + CELLS);
