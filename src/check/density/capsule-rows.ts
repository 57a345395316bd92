/**
 * Which cells of a rectangle of cloth have their centers in a capsule, which is all that lies within a radius of a segment: one
 * stretch of each row. Cells are counted from 0; a stretch whose end lies before its beginning is empty.
 */
export class CapsuleRows {
  /** of the rows that are reached, the first and the last */
  first = 0;
  last = -1;
  /** by row, the first and the last column */
  readonly from: Int32Array;
  readonly to: Int32Array;

  /** columns in the height of a row */
  private readonly finer: number;
  /** of all columns, mm */
  private readonly wide: number;

  /**
   * @param wide of a cell, mm; the first one's corner is at 0, 0
   * @param high of a cell, mm
   */
  constructor(
    private readonly columns: number,
    private readonly rows: number,
    wide: number,
    private readonly high: number,
  ) {
    this.from = new Int32Array(rows);
    this.to = new Int32Array(rows);
    this.finer = high / wide;
    this.wide = columns * wide;
  }

  /** Those within the radius of the segment from x0, y0 to x1, y1; mm. */
  ofSegment(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    if (y0 > y1) {
      this.ofSegment(x1, y1, x0, y0, radius);
      return;
    }
    if (x0 === x1 && y0 === y1) {
      this.ofPoint(x0, y0, radius);
      return;
    }
    if (this.isPassed(Math.min(x0, x1), Math.max(x0, x1), radius)) return;
    const { high: unit, finer, from, to } = this;
    // in heights of a row, the center of the first cell at 0, 0
    const aside = 0.5 / finer;
    const ax = x0 / unit - aside;
    const ay = y0 / unit - 0.5;
    const bx = x1 / unit - aside;
    const by = y1 / unit - 0.5;
    const r = radius / unit;
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.sqrt(dx * dx + dy * dy);
    // of the way down the segment
    const cos = dx / length;
    const sin = dy / length;
    const slope = dy > 0 ? dx / dy : 0;
    // the sides of the capsule run beside the segment, as far away as its radius; round ends join them
    const leftFrom = ay + r * cos;
    const leftTo = by + r * cos;
    const rightFrom = ay - r * cos;
    const rightTo = by - r * cos;
    const square = r * r;
    this.reach(ay - r, by + r);
    const most = this.columns - 1;
    for (let row = this.first; row <= this.last; row++) {
      let low: number;
      if (row <= leftFrom) low = ax - Math.sqrt(Math.max(0, square - (row - ay) * (row - ay)));
      else if (row >= leftTo) low = bx - Math.sqrt(Math.max(0, square - (row - by) * (row - by)));
      else low = ax - r * sin + (row - leftFrom) * slope;
      let high: number;
      if (row <= rightFrom) high = ax + Math.sqrt(Math.max(0, square - (row - ay) * (row - ay)));
      else if (row >= rightTo) high = bx + Math.sqrt(Math.max(0, square - (row - by) * (row - by)));
      else high = ax + r * sin + (row - rightFrom) * slope;
      from[row] = Math.max(0, Math.ceil(low * finer) | 0);
      to[row] = Math.min(most, Math.floor(high * finer) | 0);
    }
  }

  /** Those within the radius of a point; mm. */
  ofPoint(x: number, y: number, radius: number): void {
    if (this.isPassed(x, x, radius)) return;
    const { high: unit, finer, from, to } = this;
    const ax = x / unit - 0.5 / finer;
    const ay = y / unit - 0.5;
    const r = radius / unit;
    this.reach(ay - r, ay + r);
    const most = this.columns - 1;
    for (let row = this.first; row <= this.last; row++) {
      const half = Math.sqrt(Math.max(0, r * r - (row - ay) * (row - ay)));
      from[row] = Math.max(0, Math.ceil((ax - half) * finer) | 0);
      to[row] = Math.min(most, Math.floor((ax + half) * finer) | 0);
    }
  }

  /** What lies aside of all columns reaches no row. */
  private isPassed(left: number, right: number, radius: number): boolean {
    if (right + radius >= 0 && left - radius <= this.wide) return false;
    this.first = 0;
    this.last = -1;
    return true;
  }

  private reach(top: number, bottom: number): void {
    // whole numbers to the engine as well, which takes half the time
    this.first = Math.max(0, Math.ceil(top) | 0);
    this.last = Math.min(this.rows - 1, Math.floor(bottom) | 0);
  }
}
