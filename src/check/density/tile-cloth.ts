import {
  AROUND,
  COARSE,
  COARSE_CELLS,
  COVER_COLUMNS,
  COVER_ROWS,
  FINE,
  FINE_ACROSS,
  FINE_CELLS,
  TILE,
} from './cells.js';
import { CountGrid } from './count-grid.js';
import { MarkGrid } from './mark-grid.js';
import type { TileStitches } from './tiles.js';
import type { Total } from './total.js';

const coverGrid = () =>
  new MarkGrid(TILE * COVER_COLUMNS, TILE * COVER_ROWS, 1 / COVER_COLUMNS, 1 / COVER_ROWS);
const nearGrid = () => new MarkGrid(COARSE_CELLS, COARSE_CELLS, COARSE, COARSE);

/** The mm2 of a tile that each of its fine cells lies in. */
const MM_OF = Uint16Array.from({ length: FINE_CELLS ** 2 }, (_, cell) => {
  const [row, column] = [Math.floor(cell / FINE_CELLS), cell % FINE_CELLS];
  return Math.floor(row / FINE_ACROSS) * TILE + Math.floor(column / FINE_ACROSS);
});

/** A tile of cloth on which the stops are sewn one after another. */
export class TileCloth {
  private readonly thread = new CountGrid(FINE_CELLS, FINE);
  private readonly under = coverGrid();
  private readonly near = nearGrid();
  private readonly holes = new CountGrid(COARSE_CELLS, COARSE);
  private readonly layersSoFar = new Uint16Array(FINE_CELLS ** 2);
  private readonly underSoFar = coverGrid();
  private readonly nearSoFar = nearGrid();
  private holesSoFar: Uint16Array = new Uint16Array(0);
  private depthSoFar: Uint16Array = new Uint16Array(0);
  private coverSoFar: Uint16Array = new Uint16Array(0);
  private readonly coverAlone = new Uint16Array(TILE * TILE);
  private readonly coverFresh = new Uint16Array(TILE * TILE);
  /** how many cells have which count, of a stop by itself and as it changes what was there */
  private readonly cellsAlone = new Int32Array(1 << 16);
  private readonly cellsAdded = new Int32Array(1 << 17);

  /** Begins anew with bare cloth; what is counted of it is kept in these. */
  begin(holes: Uint16Array, depth: Uint16Array, cover: Uint16Array): void {
    this.layersSoFar.fill(0);
    this.underSoFar.clear();
    this.nearSoFar.clear();
    this.holesSoFar = holes;
    this.depthSoFar = depth;
    this.coverSoFar = cover;
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
      this.under.add(x0, y0, x1, y1, width / 2);
      this.near.add(x0, y0, x1, y1, AROUND);
      this.holes.addPoint(x1, y1, AROUND);
    }
    this.countLayers(alone, added);
    this.countCover(alone, added);
    this.countNear(alone, added);
    this.countHoles(alone, added);
  }

  private countLayers(alone: Total, added: Total): void {
    const { layersSoFar, depthSoFar, cellsAlone, cellsAdded } = this;
    const { counts, cells, covered } = this.thread;
    let most = 1;
    let single = 0;
    for (let k = 0; k < covered; k++) {
      const cell = cells[k];
      const count = counts[cell];
      const before = layersSoFar[cell];
      const after = before + count;
      layersSoFar[cell] = after;
      depthSoFar[MM_OF[cell]] += count;
      // most thread lies on cloth by itself, and adding to one number all the time is slow
      if (after === 1) {
        single++;
        continue;
      }
      cellsAlone[count]++;
      cellsAdded[after]++;
      if (before > 0) cellsAdded[before]--;
      if (after > most) most = after;
    }
    cellsAlone[1] += single;
    cellsAdded[1] += single;
    this.thread.clear();
    alone.layers.take(cellsAlone, most);
    added.layers.take(cellsAdded, most);
  }

  private countCover(alone: Total, added: Total): void {
    const { coverSoFar, coverAlone, coverFresh } = this;
    const mms: number[] = [];
    this.under.layOver(this.underSoFar, (row, word, covered, fresh) => {
      // a word is as wide as a mm
      const mm = Math.floor(row / COVER_ROWS) * TILE + word;
      if (coverAlone[mm] === 0) mms.push(mm);
      coverAlone[mm] += covered;
      coverFresh[mm] += fresh;
    });
    for (const mm of mms) {
      alone.covered += coverAlone[mm];
      added.covered += coverFresh[mm];
      alone.cover.add(coverAlone[mm], 1);
      added.cover.add(coverSoFar[mm], -1);
      coverSoFar[mm] += coverFresh[mm];
      added.cover.add(coverSoFar[mm], 1);
      coverAlone[mm] = 0;
      coverFresh[mm] = 0;
    }
  }

  private countNear(alone: Total, added: Total): void {
    this.near.layOver(this.nearSoFar, (_row, _word, covered, fresh) => {
      alone.near += covered;
      added.near += fresh;
    });
  }

  private countHoles(alone: Total, added: Total): void {
    const { holesSoFar, cellsAlone, cellsAdded } = this;
    const { counts, cells, covered } = this.holes;
    let most = 0;
    for (let k = 0; k < covered; k++) {
      const cell = cells[k];
      const count = counts[cell];
      const before = holesSoFar[cell];
      const after = before + count;
      holesSoFar[cell] = after;
      cellsAlone[count]++;
      cellsAdded[after]++;
      if (before > 0) cellsAdded[before]--;
      if (after > most) most = after;
    }
    this.holes.clear();
    alone.holes.take(cellsAlone, most);
    added.holes.take(cellsAdded, most);
  }
}
