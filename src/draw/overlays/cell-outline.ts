import type { Field } from '../../check/density/density.js';
import type { Pen } from '../pen.js';

/** Ways along the edges of cells, clockwise: right, down, left, up. */
const ACROSS = [1, 0, -1, 0];
const DOWN = [0, 1, 0, -1];

/**
 * Draws around all cells whose count is at least `least`: closed lines along the edges of cells, with the cells to the right
 * of the way, so that holes run the other way round. Linear in the cells.
 */
export function traceCells({ left, top, cell, columns, rows, counts }: Field, least: number, pen: Pen): void {
  const isIn = (column: number, row: number) =>
    column >= 0 && row >= 0 && column < columns && row < rows && counts[row * columns + column] >= least;
  const passed = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      // every closed line runs to the right along the upper edge of some cell
      if (passed[row * columns + column] || !isIn(column, row) || isIn(column, row - 1)) continue;
      let [x, y, way] = [column, row, 0];
      const isBack = () => x === column && y === row && way === 0;
      pen.move(left + x * cell, top + y * cell);
      do {
        if (way === 0) passed[y * columns + x] = 1;
        x += ACROSS[way];
        y += DOWN[way];
        const turn = turnAt(isIn, x, y, way);
        way = (way + turn) & 3;
        if (turn !== 0 && !isBack()) pen.line(left + x * cell, top + y * cell);
      } while (!isBack());
      pen.close();
    }
  }
}

/** 1 to the right, -1 to the left, 0 straight on. Cells that touch at a corner alone are gone round one by one. */
function turnAt(isIn: (column: number, row: number) => boolean, x: number, y: number, way: number): number {
  // of the two cells ahead, the one to the right of the way and the one to the left
  const ahead = (side: number) => {
    const [dx, dy] = [ACROSS[way] - side * DOWN[way], DOWN[way] + side * ACROSS[way]];
    return isIn(x + (dx < 0 ? -1 : 0), y + (dy < 0 ? -1 : 0));
  };
  if (!ahead(1)) return 1;
  return ahead(-1) ? -1 : 0;
}
