/**
 * Values of square cells, of those tiles of cloth that have any: large work is bare for the most part. Cells are counted in
 * columns and rows over all tiles, and kept tile by tile, row by row within each.
 */
export interface Field {
  /** of the corner of the first cell, mm in the block's frame */
  readonly left: number;
  readonly top: number;
  /** side of a cell, mm */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** cells along the side of a tile */
  readonly across: number;
  /** where in `counts` the cells of each tile begin, tile by tile, row by row; -1 where a tile has none */
  readonly starts: Int32Array;
  /** whole numbers, each of them worth `unit` */
  readonly counts: Uint16Array | Uint32Array;
  readonly unit: number;
}

/** How many tiles stand side by side. */
export const tilesAcross = ({ columns, across }: Pick<Field, 'columns' | 'across'>): number =>
  Math.ceil(columns / across);

/** Where in `counts` a cell stands; -1 where nothing is kept, outside the field too. */
export function cellIndex(field: Field, column: number, row: number): number {
  const { columns, rows, across, starts } = field;
  if (column < 0 || row < 0 || column >= columns || row >= rows) return -1;
  const [tileColumn, tileRow] = [Math.floor(column / across), Math.floor(row / across)];
  const start = starts[tileRow * tilesAcross(field) + tileColumn];
  return start < 0 ? -1 : start + (row - tileRow * across) * across + column - tileColumn * across;
}

/** Tells the cells that are kept, row by row from the left: those from `column` on are counts `from` up to, not including, `to`. */
export function eachRow(
  field: Field,
  tell: (row: number, column: number, from: number, to: number) => void,
): void {
  const { columns, rows, across, starts } = field;
  const tiles = tilesAcross(field);
  for (let row = 0; row < rows; row++) {
    const tileRow = Math.floor(row / across);
    for (let tile = 0; tile < tiles; tile++) {
      const start = starts[tileRow * tiles + tile];
      if (start < 0) continue;
      const from = start + (row - tileRow * across) * across;
      tell(row, tile * across, from, from + Math.min(across, columns - tile * across));
    }
  }
}

/** The largest value. */
export const mostOf = ({ counts, unit }: Field): number => {
  let most = 0;
  for (let i = 0; i < counts.length; i++) if (counts[i] > most) most = counts[i];
  return most * unit;
};
