import type { SewnStitches } from './sewn-stitches.js';
import { countTiles, type StopTotals, type TileCounts } from './tile-counts.js';
import type { TileStitches } from './tiles.js';

/** Those who count the tiles of cloth. */
export interface TileCrew {
  /** room for cells that all of them can write to */
  room(bytes: number): ArrayBufferLike;
  /** has all tiles counted; what each of them has counted of the stops */
  count(
    sewn: SewnStitches,
    tiles: readonly TileStitches[],
    counts: TileCounts,
  ): readonly (readonly StopTotals[])[];
}

/** One who counts them all, tile after tile. */
export const ALONE: TileCrew = {
  room: (bytes) => new ArrayBuffer(bytes),
  count(sewn, tiles, counts) {
    let t = 0;
    return [countTiles(sewn, tiles, counts, () => t++)];
  },
};
