import type { SewnStitches } from './sewn-stitches.js';
import type { Room } from './tile-counts.js';

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
 * @param room for the numbers of the stitches
 */
export function tilesOf(
  { ends }: SewnStitches,
  box: Box,
  size: number,
  around: number,
  room: Room,
): TileStitches[] {
  const columns = Math.ceil((box.right - box.left) / size);
  const rows = Math.ceil((box.bottom - box.top) / size);
  const column = (x: number) => within(Math.floor((x - box.left) / size), columns);
  const row = (y: number) => within(Math.floor((y - box.top) / size), rows);
  // by stitch, the first and the last column and row of those that it comes near to
  const reach = new Int32Array(ends.length);
  const start = new Int32Array(columns * rows + 1);
  for (let i = 0; i < ends.length; i += 4) {
    const [x0, y0, x1, y1] = [ends[i], ends[i + 1], ends[i + 2], ends[i + 3]];
    const left = column(Math.min(x0, x1) - around);
    const right = column(Math.max(x0, x1) + around);
    const top = row(Math.min(y0, y1) - around);
    const bottom = row(Math.max(y0, y1) + around);
    reach[i] = left;
    reach[i + 1] = right;
    reach[i + 2] = top;
    reach[i + 3] = bottom;
    for (let r = top; r <= bottom; r++) for (let c = left; c <= right; c++) start[r * columns + c + 1]++;
  }
  for (let tile = 0; tile < columns * rows; tile++) start[tile + 1] += start[tile];
  const stitches = new Int32Array(room(4 * start[columns * rows]));
  const next = start.slice();
  for (let i = 0; i < ends.length; i += 4) {
    for (let r = reach[i + 2]; r <= reach[i + 3]; r++) {
      for (let c = reach[i]; c <= reach[i + 1]; c++) stitches[next[r * columns + c]++] = i >> 2;
    }
  }
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

const within = (k: number, count: number): number => Math.min(count - 1, Math.max(0, k | 0));
