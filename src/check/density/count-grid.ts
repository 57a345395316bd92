/**
 * Square cells in rows, each of which counts the capsules that cover its center. A capsule is all that lies within a radius
 * of a segment; it covers one stretch of every row, so that only the two ends of the stretch are written, and counts come
 * from a running sum along the row. Cost: a capsule's height in rows, and the cells between the outermost ends of a row.
 */
export class CountGrid {
  private readonly changes: Int32Array;
  private readonly first: Int32Array;
  private readonly last: Int32Array;
  /** counts of one row */
  private readonly sums: Int32Array;
  private highest: number;
  private lowest = -1;

  /** @param cell side of a cell, mm; the first one's corner is at 0, 0 */
  constructor(
    readonly columns: number,
    readonly rows: number,
    private readonly cell: number,
  ) {
    this.changes = new Int32Array(rows * (columns + 1));
    this.first = new Int32Array(rows).fill(columns);
    this.last = new Int32Array(rows);
    this.sums = new Int32Array(columns);
    this.highest = rows;
  }

  /** Counts one more for every cell whose center lies within the radius of the segment from x0, y0 to x1, y1; mm. */
  add(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    if (y0 > y1) {
      this.add(x1, y1, x0, y0, radius);
      return;
    }
    const { cell } = this;
    // in cells, centers on whole numbers
    const ax = x0 / cell - 0.5;
    const ay = y0 / cell - 0.5;
    const bx = x1 / cell - 0.5;
    const by = y1 / cell - 0.5;
    const r = radius / cell;
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.sqrt(dx * dx + dy * dy);
    // of the way down the segment; a point has none and is all ends
    const cos = length > 0 ? dx / length : 1;
    const sin = length > 0 ? dy / length : 0;
    const slope = dy > 0 ? dx / dy : 0;
    // the sides of the capsule run beside the segment, as far away as its radius; round ends join them
    const leftFrom = ay + r * cos;
    const leftTo = by + r * cos;
    const rightFrom = ay - r * cos;
    const rightTo = by - r * cos;
    const half = (away: number) => Math.sqrt(Math.max(0, r * r - away * away));
    const toRow = Math.min(this.rows - 1, Math.floor(by + r));
    for (let row = Math.max(0, Math.ceil(ay - r)); row <= toRow; row++) {
      let low: number;
      if (row <= leftFrom) low = ax - half(row - ay);
      else if (row >= leftTo) low = bx - half(row - by);
      else low = ax - r * sin + (row - leftFrom) * slope;
      let high: number;
      if (row <= rightFrom) high = ax + half(row - ay);
      else if (row >= rightTo) high = bx + half(row - by);
      else high = ax + r * sin + (row - rightFrom) * slope;
      this.count(row, Math.ceil(low), Math.floor(high) + 1);
    }
  }

  private count(row: number, low: number, high: number): void {
    const { columns, changes } = this;
    const from = Math.max(low, 0);
    const to = Math.min(high, columns);
    if (from >= to) return;
    const at = row * (columns + 1);
    changes[at + from]++;
    changes[at + to]--;
    if (from < this.first[row]) this.first[row] = from;
    if (to > this.last[row]) this.last[row] = to;
    if (row < this.highest) this.highest = row;
    if (row > this.lowest) this.lowest = row;
  }

  /**
   * Tells the counts of all cells that may have any, row by row, and begins anew with none. `counts` holds those of the
   * columns `from` up to, not including, `to`, and is written over with the next row.
   */
  drain(tell: (row: number, from: number, to: number, counts: Int32Array) => void): void {
    const { changes, columns, sums } = this;
    for (let row = this.highest; row <= this.lowest; row++) {
      const [from, to] = [this.first[row], this.last[row]];
      const at = row * (columns + 1);
      let count = 0;
      for (let column = from; column < to; column++) {
        count += changes[at + column];
        sums[column] = count;
      }
      changes.fill(0, at + from, at + to + 1);
      this.first[row] = columns;
      this.last[row] = 0;
      if (from < to) tell(row, from, to, sums);
    }
    this.highest = this.rows;
    this.lowest = -1;
  }
}
