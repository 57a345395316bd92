/** What a measure comes to over an area: the largest value, the one that 99 % of the area does not pass, and the mean. */
export interface Spread {
  readonly max: number;
  readonly p99: number;
  readonly mean: number;
}

/** How many cells have which count. */
export class Tally {
  private counts = new Float64Array(16);

  /** More cells of a count, or fewer. */
  add(count: number, cells: number): void {
    if (count >= this.counts.length) {
      const larger = new Float64Array(2 * count);
      larger.set(this.counts);
      this.counts = larger;
    }
    this.counts[count] += cells;
  }

  /** All that another tally has, as well. */
  addAll(other: Tally): void {
    for (let count = 0; count < other.counts.length; count++) this.add(count, other.counts[count]);
  }

  /** Adds cells by their counts, up to `most`. */
  addCells(cells: Int32Array, most: number): void {
    for (let count = most; count > 0; count--) {
      if (cells[count] !== 0) this.add(count, cells[count]);
    }
  }

  /** The same, and leaves none there. */
  take(cells: Int32Array, most: number): void {
    this.addCells(cells, most);
    cells.fill(0, 0, most + 1);
  }

  /**
   * @param cells in the whole area; those that were not counted have none
   * @param unit what one count is worth
   */
  spread(cells: number, unit: number): Spread {
    if (cells <= 0) return { max: 0, p99: 0, mean: 0 };
    const { counts } = this;
    let sum = 0;
    let max = 0;
    for (let count = 1; count < counts.length; count++) {
      sum += count * counts[count];
      if (counts[count] > 0) max = count;
    }
    // from the top down until a hundredth of the area has been passed
    let p99 = max;
    for (let above = 0; p99 > 0; p99--) {
      above += counts[p99];
      if (above > cells / 100) break;
    }
    return { max: max * unit, p99: p99 * unit, mean: (sum * unit) / cells };
  }
}
