import { AROUND, COARSE, COVER, COVER_CELL, HOLE, TILE } from './cells.js';
import type { Field } from './field.js';
import { sewnBox } from './sewn-box.js';
import type { SewnStitches } from './sewn-stitches.js';
import { alone, type Call } from './tile-crew.js';
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
export function density(sewn: SewnStitches, call: Call = alone): Density {
  const crew = call(sewn.ends.length / 4);
  const box = sewnBox(sewn, AROUND) ?? NOTHING;
  const tiles = tilesOf(sewn, box, TILE, AROUND, crew.room);
  const { counts, totals } = crew.count(sewn, tiles);
  const soFar = new Total();
  const stops = sewn.stops.map((_, stop) => {
    const alone = new Total();
    for (const own of totals) {
      alone.addAll(own[stop].alone);
      soFar.addAll(own[stop].added);
    }
    return { alone: alone.measured(), soFar: soFar.measured() };
  });
  return {
    stops,
    whole: soFar.measured(),
    holes: fieldOf(box, tiles, COARSE, HOLE, counts.holes),
    depth: fieldOf(box, tiles, COVER, COVER_CELL, counts.depth),
    cover: fieldOf(box, tiles, COVER, COVER_CELL, counts.cover),
  };
}

/** A field of the box whose tiles are kept in the order in which they are given. */
function fieldOf(
  box: Box,
  tiles: readonly TileStitches[],
  cell: number,
  unit: number,
  counts: Field['counts'],
): Field {
  const across = Math.round(TILE / cell);
  const columns = Math.round((box.right - box.left) / cell);
  const rows = Math.round((box.bottom - box.top) / cell);
  const [wide, high] = [Math.ceil(columns / across), Math.ceil(rows / across)];
  const starts = new Int32Array(wide * high).fill(-1);
  tiles.forEach(({ left, top }, t) => {
    starts[Math.round((top - box.top) / TILE) * wide + Math.round((left - box.left) / TILE)] =
      t * across ** 2;
  });
  return { left: box.left, top: box.top, cell, columns, rows, across, starts, counts, unit };
}

/** Where nothing is sewn. */
const NOTHING: Box = { left: 0, top: 0, right: 0, bottom: 0 };
