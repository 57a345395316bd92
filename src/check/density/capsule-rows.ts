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

  /** rows in a mm */
  private readonly perMm: number;
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
    high: number,
  ) {
    this.perMm = 1 / high;
    this.from = new Int32Array(rows);
    this.to = new Int32Array(rows);
    this.finer = high / wide;
    this.wide = columns * wide;
  }

  /** Those within the radius of the segment from x0, y0 to x1, y1; mm. */
  ofSegment(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    if (y0 > y1) this.ofDownward(x1, y1, x0, y0, radius);
    else if (x0 === x1 && y0 === y1) this.ofPoint(x0, y0, radius);
    else this.ofDownward(x0, y0, x1, y1, radius);
  }

  /** The same of a segment that does not rise. */
  private ofDownward(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    if (this.isPassed(Math.min(x0, x1), Math.max(x0, x1), radius)) return;
    const { perMm, finer, from, to } = this;
    // in heights of a row, the center of the first cell at 0, 0
    const ay = y0 * perMm - 0.5;
    const by = y1 * perMm - 0.5;
    const r = radius * perMm;
    if (!this.reach(ay - r, by + r)) return;
    const { first, last } = this;
    const ax = x0 * perMm - 0.5 / finer;
    const bx = x1 * perMm - 0.5 / finer;
    const dx = bx - ax;
    const dy = by - ay;
    const shorter = r / Math.sqrt(dx * dx + dy * dy);
    // the sides of the capsule run beside the segment, as far away as its radius; round ends join them
    const over = dx * shorter;
    const beside = dy * shorter;
    const step = dy > 0 ? (dx / dy) * finer : 0;
    const square = r * r;
    const most = this.columns - 1;
    const end = this.columns + 1;
    // each side is a round end, a straight stretch and a round end again; `| 0` rounds down what is above 0, and up what is
    // taken from a whole number: to the engine it is a whole number then as well, which takes half the time
    let row = first;
    let until = Math.min(last, Math.floor(ay + over) | 0);
    for (; row <= until; row++) {
      from[row] = Math.max(0, end - ((end - (ax - root(square - (row - ay) * (row - ay))) * finer) | 0));
    }
    until = Math.min(last, (Math.ceil(by + over) | 0) - 1);
    for (let x = end - (ax - beside) * finer - (row - ay - over) * step; row <= until; row++, x -= step) {
      from[row] = Math.max(0, end - (x | 0));
    }
    for (; row <= last; row++) {
      from[row] = Math.max(0, end - ((end - (bx - root(square - (row - by) * (row - by))) * finer) | 0));
    }
    row = first;
    until = Math.min(last, Math.floor(ay - over) | 0);
    for (; row <= until; row++) {
      to[row] = Math.min(most, (((ax + root(square - (row - ay) * (row - ay))) * finer + 1) | 0) - 1);
    }
    until = Math.min(last, (Math.ceil(by - over) | 0) - 1);
    for (let x = (ax + beside) * finer + (row - ay + over) * step + 1; row <= until; row++, x += step) {
      to[row] = Math.min(most, (x | 0) - 1);
    }
    for (; row <= last; row++) {
      to[row] = Math.min(most, (((bx + root(square - (row - by) * (row - by))) * finer + 1) | 0) - 1);
    }
  }

  /** Those within the radius of a point; mm. */
  ofPoint(x: number, y: number, radius: number): void {
    if (this.isPassed(x, x, radius)) return;
    const { perMm, finer, from, to } = this;
    const ay = y * perMm - 0.5;
    const r = radius * perMm;
    if (!this.reach(ay - r, ay + r)) return;
    const { first, last } = this;
    const middle = x * perMm * finer - 0.5;
    const most = this.columns - 1;
    const end = this.columns + 1;
    for (let row = first; row <= last; row++) {
      const half = root(r * r - (row - ay) * (row - ay)) * finer;
      from[row] = Math.max(0, end - ((end - middle + half) | 0));
      to[row] = Math.min(most, ((middle + half + 1) | 0) - 1);
    }
  }

  /** What lies aside of all columns reaches no row. */
  private isPassed(left: number, right: number, radius: number): boolean {
    if (right + radius >= 0 && left - radius <= this.wide) return false;
    this.first = 0;
    this.last = -1;
    return true;
  }

  /** Whether any row is reached from one height to another. */
  private reach(top: number, bottom: number): boolean {
    this.first = Math.max(0, Math.ceil(top) | 0);
    this.last = Math.min(this.rows - 1, Math.floor(bottom) | 0);
    return this.first <= this.last;
  }
}

/** Of what rounding may have brought below 0, nothing. */
const root = (square: number): number => (square > 0 ? Math.sqrt(square) : 0);
