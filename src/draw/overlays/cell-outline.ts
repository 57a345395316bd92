import { cellIndex, eachRow, type Field } from '../../check/density/field.js';
import type { Pen } from '../pen.js';

/** Ways along the edges of cells, clockwise: right, down, left, up. */
const ACROSS = [1, 0, -1, 0];
const DOWN = [0, 1, 0, -1];

/**
 * Draws around all cells whose count is at least `least`: closed lines along the edges of cells, with the cells to the right
 * of the way, so that holes run the other way round. Linear in the cells that are kept.
 */
export function traceCells(field: Field, least: number, pen: Pen): void {
  const { left, top, cell, counts } = field;
  const isIn = (column: number, row: number) => {
    const at = cellIndex(field, column, row);
    return at >= 0 && counts[at] >= least;
  };
  const passed = new Uint8Array(counts.length);
  eachRow(field, (row, first, from, to) => {
    for (let i = from; i < to; i++) {
      const column = first + i - from;
      // every closed line runs to the right along the upper edge of some cell
      if (counts[i] < least || passed[i] || isIn(column, row - 1)) continue;
      let [x, y, way] = [column, row, 0];
      const isBack = () => x === column && y === row && way === 0;
      pen.move(left + x * cell, top + y * cell);
      do {
        if (way === 0) passed[cellIndex(field, x, y)] = 1;
        x += ACROSS[way];
        y += DOWN[way];
        const turn = turnAt(isIn, x, y, way);
        way = (way + turn) & 3;
        if (turn !== 0 && !isBack()) pen.line(left + x * cell, top + y * cell);
      } while (!isBack());
      pen.close();
    }
  });
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
