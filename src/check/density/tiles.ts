import type { SewnStitches } from './sewn-stitches.js';

/** A part of the cloth, mm. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A square of cloth and the stitches that come near it, ascending. */
export interface TileStitches {
  readonly left: number;
  readonly top: number;
  readonly stitches: Int32Array;
}

/**
 * The squares of a box on which something is sewn, row by row. Linear in the stitches and the squares that they pass.
 *
 * @param size of a square, mm
 * @param around how near to a square a stitch belongs to it, mm
 */
export function tilesOf({ ends }: SewnStitches, box: Box, size: number, around: number): TileStitches[] {
  const columns = Math.ceil((box.right - box.left) / size);
  const rows = Math.ceil((box.bottom - box.top) / size);
  const column = (x: number) => Math.min(columns - 1, Math.max(0, Math.floor((x - box.left) / size)));
  const row = (y: number) => Math.min(rows - 1, Math.max(0, Math.floor((y - box.top) / size)));
  const passed = (tell: (tile: number, stitch: number) => void) => {
    for (let i = 0; i < ends.length; i += 4) {
      const [x0, y0, x1, y1] = [ends[i], ends[i + 1], ends[i + 2], ends[i + 3]];
      const firstColumn = column(Math.min(x0, x1) - around);
      const lastColumn = column(Math.max(x0, x1) + around);
      const lastRow = row(Math.max(y0, y1) + around);
      for (let r = row(Math.min(y0, y1) - around); r <= lastRow; r++) {
        for (let c = firstColumn; c <= lastColumn; c++) tell(r * columns + c, i / 4);
      }
    }
  };
  const start = new Int32Array(columns * rows + 1);
  passed((tile) => {
    start[tile + 1]++;
  });
  for (let tile = 0; tile < columns * rows; tile++) start[tile + 1] += start[tile];
  const stitches = new Int32Array(start[columns * rows]);
  const next = start.slice();
  passed((tile, stitch) => {
    stitches[next[tile]++] = stitch;
  });
  const tiles: TileStitches[] = [];
  for (let tile = 0; tile < columns * rows; tile++) {
    if (start[tile] === start[tile + 1]) continue;
    tiles.push({
      left: box.left + (tile % columns) * size,
      top: box.top + Math.floor(tile / columns) * size,
      stitches: stitches.subarray(start[tile], start[tile + 1]),
    });
  }
  return tiles;
}
