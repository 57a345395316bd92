import { CountGrid } from './count-grid.js';
import type { SewnStitches } from './sewn-stitches.js';
import { type Spread, Tally } from './tally.js';
import { type Box, type TileStitches, tilesOf } from './tiles.js';

/** Cells on which thread is counted, mm. */
const FINE = 0.1;
/** Cells on which holes are counted, and how far from a stitch cloth counts as sewn on, mm. */
const COARSE = 0.25;
/** Holes are counted within this of a place, and cloth this near to a stitch counts as sewn on; mm. */
const AROUND = 1;
/** Cells in which the share of cloth under thread is measured, mm. */
const COVER = 1;
const FINE_ACROSS = Math.round(COVER / FINE);
const FINE_IN_COVER = FINE_ACROSS ** 2;
/** What one piercing around a place comes to, holes for each mm2. */
const HOLE = 1 / (Math.PI * AROUND ** 2);
/** Work is measured tile by tile, mm: small enough for counting to be quick, in whole cells of every size. */
const TILE = 64;

/** How densely stitches stand, over the cloth within 1 mm of a stitch. */
export interface Measured {
  /** piercings within 1 mm of a place, by that circle's area; coincident ones each count */
  readonly holesPerMm2: Spread;
  /** stitches that lie over one another, each as wide as its thread */
  readonly layers: Spread;
  /** share of cloth under at least one thread: of the mm2 that is most covered, and of all cloth within 1 mm of a stitch */
  readonly cover: { readonly max: number; readonly mean: number };
  /** cloth within 1 mm of a stitch, mm2 */
  readonly areaMm2: number;
}

export interface Density {
  /** for each stop by itself, and for all that is sewn up to and with it */
  readonly stops: readonly { readonly alone: Measured; readonly soFar: Measured }[];
  readonly whole: Measured;
  /** holes for each mm2, within 1 mm of places 0.25 mm apart */
  readonly holes: Field;
  /** how deep thread lies, on the average over each mm2 */
  readonly depth: Field;
}

/** Values of square cells, row by row. */
export interface Field {
  /** of the corner of the first cell, mm in the block's frame */
  readonly left: number;
  readonly top: number;
  /** side of a cell, mm */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** whole numbers, each of them worth `unit` */
  readonly counts: Uint16Array;
  readonly unit: number;
}

/**
 * The density of a piece of work, stop by stop and up to each of them. Cells are anchored at the block's origin. Cost:
 * linear in the stitches and their length, and in the cloth that each stop passes over.
 */
export function density(sewn: SewnStitches): Density {
  const box = boxOf(sewn);
  const totals = sewn.stops.map(() => ({ alone: new Total(), added: new Total() }));
  const field = (cell: number, unit: number): Field => {
    const columns = Math.round((box.right - box.left) / cell);
    const rows = Math.round((box.bottom - box.top) / cell);
    return {
      left: box.left,
      top: box.top,
      cell,
      columns,
      rows,
      counts: new Uint16Array(columns * rows),
      unit,
    };
  };
  const holes = field(COARSE, HOLE);
  const depth = field(COVER, 1 / FINE_IN_COVER);
  const cloth = new Tile();
  for (const tile of tilesOf(sewn, box, TILE, AROUND)) {
    let at = 0;
    sewn.stops.forEach((stop, s) => {
      const from = at;
      while (at < tile.stitches.length && tile.stitches[at] < stop.to) at++;
      if (at === from) return;
      cloth.sew(sewn.ends, tile, from, at, stop.width, totals[s].alone, totals[s].added);
    });
    copyInto(holes, cloth.holesSoFar, tile.left, tile.top);
    copyInto(depth, cloth.depthSoFar, tile.left, tile.top);
    cloth.clear();
  }
  const soFar = new Total();
  const stops = totals.map(({ alone, added }) => {
    soFar.addAll(added);
    return { alone: alone.measured(), soFar: soFar.measured() };
  });
  return { stops, whole: soFar.measured(), holes, depth };
}

/** Counts of a tile put where they belong in a field of the same cells. */
function copyInto(field: Field, tile: Uint16Array, left: number, top: number): void {
  const { cell, columns, rows, counts } = field;
  const across = Math.round(TILE / cell);
  const column = Math.round((left - field.left) / cell);
  const row = Math.round((top - field.top) / cell);
  const wide = Math.min(across, columns - column);
  for (let r = 0; r < across && row + r < rows; r++) {
    counts.set(tile.subarray(r * across, r * across + wide), (row + r) * columns + column);
  }
}

/** The box of all cloth within 1 mm of a stitch, in whole mm. */
function boxOf({ ends }: SewnStitches): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < ends.length; i += 2) {
    if (ends[i] < left) left = ends[i];
    if (ends[i] > right) right = ends[i];
    if (ends[i + 1] < top) top = ends[i + 1];
    if (ends[i + 1] > bottom) bottom = ends[i + 1];
  }
  if (left > right) return { left: 0, top: 0, right: 0, bottom: 0 };
  return {
    left: Math.floor(left - AROUND),
    top: Math.floor(top - AROUND),
    right: Math.ceil(right + AROUND),
    bottom: Math.ceil(bottom + AROUND),
  };
}

/** What is counted of a stop, over all strips. */
class Total {
  readonly holes = new Tally();
  readonly layers = new Tally();
  /** by fine cells under thread */
  readonly cover = new Tally();
  /** coarse cells near a stitch */
  near = 0;
  /** fine cells under thread */
  covered = 0;

  addAll(other: Total): void {
    this.holes.addAll(other.holes);
    this.layers.addAll(other.layers);
    this.cover.addAll(other.cover);
    this.near += other.near;
    this.covered += other.covered;
  }

  measured(): Measured {
    const areaMm2 = this.near * COARSE ** 2;
    const fine = areaMm2 / FINE ** 2;
    return {
      holesPerMm2: this.holes.spread(this.near, HOLE),
      layers: this.layers.spread(fine, 1),
      cover: {
        max: this.cover.spread(1, 1 / FINE_IN_COVER).max,
        mean: fine > 0 ? this.covered / fine : 0,
      },
      areaMm2,
    };
  }
}

const gridOf = (cell: number): CountGrid =>
  new CountGrid(Math.round(TILE / cell), Math.round(TILE / cell), cell);
const cellsOf = ({ columns, rows }: CountGrid): number => columns * rows;

/** A tile of cloth on which the stops are sewn one after another. */
class Tile {
  private readonly thread = gridOf(FINE);
  private readonly near = gridOf(COARSE);
  private readonly holes = gridOf(COARSE);
  private readonly layersSoFar = new Uint16Array(cellsOf(this.thread));
  private readonly nearSoFar = new Uint8Array(cellsOf(this.near));
  readonly holesSoFar = new Uint16Array(cellsOf(this.holes));
  readonly depthSoFar = new Uint16Array(TILE * TILE);
  private readonly coverSoFar = new Uint8Array(TILE * TILE);
  private readonly coverAlone = new Uint8Array(TILE * TILE);

  clear(): void {
    this.layersSoFar.fill(0);
    this.nearSoFar.fill(0);
    this.holesSoFar.fill(0);
    this.depthSoFar.fill(0);
    this.coverSoFar.fill(0);
  }

  /** Sews some stitches of a stop on what is there: `alone` gets what they are by themselves, `added` what they change. */
  sew(
    ends: Float64Array,
    { left, top, stitches }: TileStitches,
    from: number,
    to: number,
    width: number,
    alone: Total,
    added: Total,
  ): void {
    for (let k = from; k < to; k++) {
      const i = 4 * stitches[k];
      const x0 = ends[i] - left;
      const y0 = ends[i + 1] - top;
      const x1 = ends[i + 2] - left;
      const y1 = ends[i + 3] - top;
      this.thread.add(x0, y0, x1, y1, width / 2);
      this.near.add(x0, y0, x1, y1, AROUND);
      this.holes.add(x1, y1, x1, y1, AROUND);
    }
    this.countThread(alone, added);
    this.countNear(alone, added);
    this.countHoles(alone, added);
  }

  private countThread(alone: Total, added: Total): void {
    const { layersSoFar, depthSoFar, coverSoFar, coverAlone } = this;
    const { columns } = this.thread;
    const wide = columns / FINE_ACROSS;
    const touched: number[] = [];
    this.thread.drain((row, from, to, counts) => {
      const at = row * columns;
      const mms = Math.floor(row / FINE_ACROSS) * wide;
      for (let start = from; start < to; ) {
        const across = Math.floor(start / FINE_ACROSS);
        const end = Math.min(to, (across + 1) * FINE_ACROSS);
        const mm = mms + across;
        let own = 0;
        let depth = 0;
        let fresh = 0;
        for (let column = start; column < end; column++) {
          const count = counts[column];
          if (count === 0) continue;
          depth += count;
          const before = layersSoFar[at + column];
          layersSoFar[at + column] = before + count;
          alone.layers.add(count, 1);
          added.layers.add(before + count, 1);
          own++;
          if (before > 0) added.layers.add(before, -1);
          else fresh++;
        }
        start = end;
        if (own === 0) continue;
        if (coverAlone[mm] === 0) touched.push(mm);
        depthSoFar[mm] += depth;
        coverAlone[mm] += own;
        alone.covered += own;
        if (fresh === 0) continue;
        added.covered += fresh;
        added.cover.add(coverSoFar[mm], -1);
        coverSoFar[mm] += fresh;
        added.cover.add(coverSoFar[mm], 1);
      }
    });
    for (const mm of touched) {
      alone.cover.add(coverAlone[mm], 1);
      coverAlone[mm] = 0;
    }
  }

  private countNear(alone: Total, added: Total): void {
    const { nearSoFar } = this;
    const { columns } = this.near;
    this.near.drain((row, from, to, counts) => {
      const at = row * columns;
      for (let column = from; column < to; column++) {
        if (counts[column] === 0) continue;
        alone.near++;
        if (nearSoFar[at + column] === 0) added.near++;
        nearSoFar[at + column] = 1;
      }
    });
  }

  private countHoles(alone: Total, added: Total): void {
    const { holesSoFar } = this;
    const { columns } = this.holes;
    this.holes.drain((row, from, to, counts) => {
      const at = row * columns;
      for (let column = from; column < to; column++) {
        const count = counts[column];
        if (count === 0) continue;
        const before = holesSoFar[at + column];
        holesSoFar[at + column] = before + count;
        alone.holes.add(count, 1);
        added.holes.add(before + count, 1);
        if (before > 0) added.holes.add(before, -1);
      }
    });
  }
}
