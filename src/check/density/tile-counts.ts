import { COARSE_CELLS, TILE } from './cells.js';
import type { SewnStitches } from './sewn-stitches.js';
import { TileCloth } from './tile-cloth.js';
import type { TileStitches } from './tiles.js';
import { Total } from './total.js';

/** Cells of all tiles that have any, tile by tile. */
export interface TileCounts {
  readonly holes: Uint16Array;
  readonly depth: Uint32Array;
  readonly cover: Uint16Array;
}

/** Nothing counted yet, for so many tiles. */
export const countsFor = (tiles: number, room: Room): TileCounts => ({
  holes: new Uint16Array(room(2 * tiles * HOLE_CELLS)),
  depth: new Uint32Array(room(4 * tiles * COVER_CELLS)),
  cover: new Uint16Array(room(2 * tiles * COVER_CELLS)),
});

/** Gives room for so many bytes, all 0. */
export type Room = (bytes: number) => ArrayBufferLike;

/** What one stop comes to by itself, and what it adds to those before it. */
export interface StopTotals {
  readonly alone: Total;
  readonly added: Total;
}

/** Cells that a tile has of each count. */
export const HOLE_CELLS = COARSE_CELLS ** 2;
export const COVER_CELLS = TILE ** 2;

/**
 * Counts tiles, in any order and by whomever: cells go to the tile's own place in `counts`, and what comes out for the
 * stops adds up. Cost: linear in the stitches of the tiles and the cloth that each stop passes over.
 *
 * @param next the number of a tile that nobody has counted yet; one past the last when there is none
 */
export function countTiles(
  sewn: SewnStitches,
  tiles: readonly TileStitches[],
  counts: TileCounts,
  next: () => number,
): StopTotals[] {
  const totals = sewn.stops.map((): StopTotals => ({ alone: new Total(), added: new Total() }));
  const cloth = new TileCloth();
  for (let t = next(); t < tiles.length; t = next()) {
    const tile = tiles[t];
    cloth.begin(
      counts.holes.subarray(t * HOLE_CELLS, (t + 1) * HOLE_CELLS),
      counts.depth.subarray(t * COVER_CELLS, (t + 1) * COVER_CELLS),
      counts.cover.subarray(t * COVER_CELLS, (t + 1) * COVER_CELLS),
    );
    let stop = 0;
    for (let at = 0; at < tile.stitches.length; ) {
      const from = at;
      stop = stopOf(sewn.stops, tile.stitches[at], stop);
      const { to, width } = sewn.stops[stop];
      while (at < tile.stitches.length && tile.stitches[at] < to) at++;
      cloth.sew(sewn.ends, tile, from, at, width, totals[stop].alone, totals[stop].added);
    }
  }
  return totals;
}

/** The stop that a stitch belongs to, `first` or a later one. */
function stopOf(stops: SewnStitches['stops'], stitch: number, first: number): number {
  let [low, high] = [first, stops.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (stops[middle].to > stitch) high = middle;
    else low = middle + 1;
  }
  return low;
}
