import type { SewnStitches } from './sewn-stitches.js';
import { countsFor, countTiles, type Room, type StopTotals, type TileCounts } from './tile-counts.js';
import type { TileStitches } from './tiles.js';

/** Calls those who count the tiles of so many stitches, before there are any: coming takes time. */
export type Call = (stitches: number) => TileCrew;

/** Those who count the tiles of cloth. */
export interface TileCrew {
  /** room that all of them see */
  readonly room: Room;
  /** has all tiles counted */
  count(sewn: SewnStitches, tiles: readonly TileStitches[]): Counted;
}

export interface Counted {
  readonly counts: TileCounts;
  /** what each of the crew has counted of the stops */
  readonly totals: readonly (readonly StopTotals[])[];
}

const room: Room = (bytes) => new ArrayBuffer(bytes);

/** One who counts them all, tile after tile. */
const ALONE: TileCrew = {
  room,
  count(sewn, tiles) {
    const counts = countsFor(tiles.length, room);
    let t = 0;
    return { counts, totals: [countTiles(sewn, tiles, counts, () => t++)] };
  },
};

export const alone: Call = () => ALONE;
