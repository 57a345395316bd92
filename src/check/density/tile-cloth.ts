import { AROUND, COARSE, COARSE_CELLS, COVER, COVER_ROWS, TILE } from './cells.js';
import { HoleGrid } from './hole-grid.js';
import { DEEPEST, LayerGrid } from './layer-grid.js';
import { MarkGrid } from './mark-grid.js';
import type { TileStitches } from './tiles.js';
import type { Total } from './total.js';

const threadGrid = () => new LayerGrid(TILE, COVER, COVER_ROWS);
const nearGrid = () => new MarkGrid(COARSE_CELLS, COARSE_CELLS, COARSE);

/** No more holes than this are told of a cell. */
const MOST_HOLES = 0xffff;

/** A tile of cloth on which the stops are sewn one after another. */
export class TileCloth {
  private readonly thread = threadGrid();
  private readonly threadSoFar = threadGrid();
  private readonly near = nearGrid();
  private readonly nearSoFar = nearGrid();
  private readonly holes = new HoleGrid(COARSE_CELLS, COARSE);
  private holesSoFar: Uint16Array = new Uint16Array(0);
  private depthSoFar: Uint32Array = new Uint32Array(0);
  private coverSoFar: Uint16Array = new Uint16Array(0);
  /** how many cells have which count: of a stop by itself, as it changes what was there, and of both where nothing was */
  private readonly cellsAlone = new Int32Array(DEEPEST + 4);
  private readonly cellsAdded = new Int32Array(DEEPEST + 4);
  private readonly cellsBoth = new Int32Array(DEEPEST + 4);

  /** Begins anew with bare cloth; what is counted of it is kept in these. */
  begin(holes: Uint16Array, depth: Uint32Array, cover: Uint16Array): void {
    this.threadSoFar.clear();
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
    const { thread, near, holes } = this;
    for (let k = from; k < to; k++) {
      const i = 4 * stitches[k];
      const x0 = ends[i] - left;
      const y0 = ends[i + 1] - top;
      const x1 = ends[i + 2] - left;
      const y1 = ends[i + 3] - top;
      thread.add(x0, y0, x1, y1, width / 2);
      near.add(x0, y0, x1, y1, AROUND);
      holes.add(x1, y1, AROUND);
    }
    this.countThread(alone, added);
    this.countNear(alone, added);
    this.countHoles(alone, added);
  }

  private countThread(alone: Total, added: Total): void {
    const { thread, threadSoFar, depthSoFar, coverSoFar } = this;
    const { cellsAlone, cellsAdded, cellsBoth } = this;
    const { top, bottom, left, right } = thread;
    const isFirst = threadSoFar.isBare;
    for (let row = top; row <= bottom; row++) {
      for (let mm = row * TILE + left; mm <= row * TILE + right; mm++) {
        if (!thread.isTouched(mm)) continue;
        const before = coverSoFar[mm];
        const { covered, layers } = thread.tell(mm, before === 0 ? cellsBoth : cellsAlone, 1);
        if (covered === 0) continue;
        let after = covered;
        if (before > 0) {
          threadSoFar.tell(mm, cellsAdded, -1);
          threadSoFar.addBlock(mm, thread);
          after = threadSoFar.tell(mm, cellsAdded, 1).covered;
          added.cover.add(before, -1);
        } else if (!isFirst) threadSoFar.addBlock(mm, thread);
        alone.cover.add(covered, 1);
        added.cover.add(after, 1);
        alone.covered += covered;
        added.covered += after - before;
        coverSoFar[mm] = after;
        depthSoFar[mm] += layers;
      }
    }
    alone.layers.addCells(cellsBoth, thread.deepest);
    added.layers.take(cellsBoth, thread.deepest);
    alone.layers.take(cellsAlone, thread.deepest);
    added.layers.take(cellsAdded, threadSoFar.deepest);
    if (isFirst) thread.swap(threadSoFar);
    else thread.clear();
  }

  private countNear(alone: Total, added: Total): void {
    const { covered, fresh } = this.near.layOver(this.nearSoFar);
    alone.near += covered;
    added.near += fresh;
  }

  private countHoles(alone: Total, added: Total): void {
    const { holes, holesSoFar, cellsAlone, cellsAdded, cellsBoth } = this;
    const { steps, first, last, left, right, across } = holes;
    let most = 0;
    for (let row = first; row <= last; row++) {
      const at = row * (across + 1);
      let holesHere = 0;
      for (let column = left; column <= right; column++) {
        holesHere += steps[at + column];
        if (holesHere === 0) continue;
        const count = Math.min(holesHere, MOST_HOLES);
        const cell = row * across + column;
        const before = holesSoFar[cell];
        const after = Math.min(before + count, MOST_HOLES);
        holesSoFar[cell] = after;
        if (after > most) most = after;
        if (before === 0) {
          cellsBoth[count]++;
          continue;
        }
        cellsAlone[count]++;
        cellsAdded[before]--;
        cellsAdded[after]++;
      }
    }
    alone.holes.addCells(cellsBoth, most);
    added.holes.take(cellsBoth, most);
    alone.holes.take(cellsAlone, most);
    added.holes.take(cellsAdded, most);
    holes.clear();
  }
}
