import { CapsuleRows } from './capsule-rows.js';

/**
 * A square of cells, row by row, each of which counts the points within a radius of its center. What is kept is by how much
 * a cell's count differs from that of the cell before it, which for each point and row changes in two cells only.
 */
export class HoleGrid {
  /** by row one more than there are cells */
  readonly steps: Int32Array;
  /** the rows and columns in which anything is counted */
  first: number;
  last = -1;
  left: number;
  right = -1;
  private readonly circle: CapsuleRows;

  /**
   * @param across cells along the side of the square
   * @param cell side of a cell, mm; the first one's corner is at 0, 0
   */
  constructor(
    readonly across: number,
    private readonly cell: number,
  ) {
    this.steps = new Int32Array(across * (across + 1));
    this.circle = new CapsuleRows(across, across, cell, cell);
    this.first = across;
    this.left = across;
  }

  /** Counts one more for every cell whose center lies within the radius of a point; mm. */
  add(x: number, y: number, radius: number): void {
    const { steps, across, circle, cell } = this;
    circle.ofPoint(x, y, radius);
    const { first, last, from, to } = circle;
    if (first > last) return;
    this.first = Math.min(this.first, first);
    this.last = Math.max(this.last, last);
    this.left = Math.min(this.left, Math.max(0, Math.floor((x - radius) / cell)));
    this.right = Math.max(this.right, Math.min(across - 1, Math.floor((x + radius) / cell)));
    for (let row = first; row <= last; row++) {
      if (to[row] < from[row]) continue;
      const at = row * (across + 1);
      steps[at + from[row]]++;
      steps[at + to[row] + 1]--;
    }
  }

  /** Begins anew with nothing counted. */
  clear(): void {
    const { steps, across, first, last } = this;
    if (last >= first) steps.fill(0, first * (across + 1), (last + 1) * (across + 1));
    this.first = across;
    this.last = -1;
    this.left = across;
    this.right = -1;
  }
}
