import { CapsuleRows } from './capsule-rows.js';

/**
 * A square of cells, row by row, each of which counts the capsules that cover its center, and the list of those that are
 * covered at all. Cost: the cells that a capsule covers and its height in rows; nothing for cells that none covers. No cell
 * may be covered by more than 65,535.
 */
export class CountGrid {
  readonly counts: Uint16Array;
  /** the cells that are covered, `covered` of them, in no order */
  readonly cells: Int32Array;
  covered = 0;
  private readonly capsule: CapsuleRows;

  /**
   * @param across cells along the side of the square
   * @param cell side of a cell, mm; the first one's corner is at 0, 0
   */
  constructor(
    readonly across: number,
    cell: number,
  ) {
    this.counts = new Uint16Array(across * across);
    this.cells = new Int32Array(across * across + 1);
    this.capsule = new CapsuleRows(across, across, cell, cell);
  }

  /** Begins anew with no cell covered. */
  clear(): void {
    const { counts, cells } = this;
    for (let k = 0; k < this.covered; k++) counts[cells[k]] = 0;
    this.covered = 0;
  }

  /** Counts one more for every cell whose center lies within the radius of the segment from x0, y0 to x1, y1; mm. */
  add(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    this.capsule.ofSegment(x0, y0, x1, y1, radius);
    this.cover();
  }

  /** Counts one more for every cell whose center lies within the radius of a point; mm. */
  addPoint(x: number, y: number, radius: number): void {
    this.capsule.ofPoint(x, y, radius);
    this.cover();
  }

  private cover(): void {
    const { counts, cells, across } = this;
    const { first, last, from, to } = this.capsule;
    let { covered } = this;
    for (let row = first; row <= last; row++) {
      const end = row * across + to[row];
      for (let at = row * across + from[row]; at <= end; at++) {
        const count = counts[at];
        counts[at] = count + 1;
        // every cell is put on the list and stays where its count was 0: a question would cost more
        cells[covered] = at;
        covered += (count - 1) >>> 31;
      }
    }
    this.covered = covered;
  }
}
