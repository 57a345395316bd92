import { AROUND, COARSE, COARSE_CELLS, COVER, COVER_CELL, HOLE, TILE } from './cells.js';
import type { Field } from './field.js';
import { sewnBox } from './sewn-box.js';
import type { SewnStitches } from './sewn-stitches.js';
import { TileCloth } from './tile-cloth.js';
import { type Box, type TileStitches, tilesOf } from './tiles.js';
import { type Measured, Total } from './total.js';

export interface Density {
  /** for each stop by itself, and for all that is sewn up to and with it */
  readonly stops: readonly { readonly alone: Measured; readonly soFar: Measured }[];
  readonly whole: Measured;
  /** holes for each mm2, within 1 mm of places 0.25 mm apart */
  readonly holes: Field;
  /** how deep thread lies, on the average over each mm2 */
  readonly depth: Field;
  /** share of each mm2 under at least one thread */
  readonly cover: Field;
}

/**
 * The density of a piece of work, stop by stop and up to each of them. Cells are anchored at the block's origin. Cost:
 * linear in the stitches and their length, and in the cloth that each stop passes over.
 */
export function density(sewn: SewnStitches): Density {
  const box = sewnBox(sewn, AROUND) ?? NOTHING;
  const totals = sewn.stops.map(() => ({ alone: new Total(), added: new Total() }));
  const tiles = tilesOf(sewn, box, TILE, AROUND);
  const holes = fieldOf(box, tiles, COARSE, HOLE, Uint16Array);
  const depth = fieldOf(box, tiles, COVER, COVER_CELL, Uint32Array);
  const cover = fieldOf(box, tiles, COVER, COVER_CELL, Uint16Array);
  const cloth = new TileCloth();
  tiles.forEach((tile, t) => {
    const [coarse, mms] = [COARSE_CELLS ** 2, TILE ** 2];
    cloth.begin(
      holes.counts.subarray(t * coarse, (t + 1) * coarse),
      depth.counts.subarray(t * mms, (t + 1) * mms),
      cover.counts.subarray(t * mms, (t + 1) * mms),
    );
    let stop = 0;
    for (let at = 0; at < tile.stitches.length; ) {
      const from = at;
      stop = stopOf(sewn.stops, tile.stitches[at], stop);
      const { to, width } = sewn.stops[stop];
      while (at < tile.stitches.length && tile.stitches[at] < to) at++;
      cloth.sew(sewn.ends, tile, from, at, width, totals[stop].alone, totals[stop].added);
    }
  });
  const soFar = new Total();
  const stops = totals.map(({ alone, added }) => {
    soFar.addAll(added);
    return { alone: alone.measured(), soFar: soFar.measured() };
  });
  return { stops, whole: soFar.measured(), holes, depth, cover };
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

/** A field of the box whose tiles are kept in the order in which they are given. */
function fieldOf<Counts extends Field['counts']>(
  box: Box,
  tiles: readonly TileStitches[],
  cell: number,
  unit: number,
  Kept: new (length: number) => Counts,
): Field & { readonly counts: Counts } {
  const across = Math.round(TILE / cell);
  const columns = Math.round((box.right - box.left) / cell);
  const rows = Math.round((box.bottom - box.top) / cell);
  const [wide, high] = [Math.ceil(columns / across), Math.ceil(rows / across)];
  const starts = new Int32Array(wide * high).fill(-1);
  tiles.forEach(({ left, top }, t) => {
    starts[Math.round((top - box.top) / TILE) * wide + Math.round((left - box.left) / TILE)] =
      t * across ** 2;
  });
  const counts = new Kept(tiles.length * across ** 2);
  return { left: box.left, top: box.top, cell, columns, rows, across, starts, counts, unit };
}

/** Where nothing is sewn. */
const NOTHING: Box = { left: 0, top: 0, right: 0, bottom: 0 };
