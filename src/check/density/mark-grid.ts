import { bits } from './bits.js';
import { CapsuleRows } from './capsule-rows.js';

/** A rectangle of cells that are covered by some capsule or by none: a bit for each, 32 in a word, words row by row. */
export class MarkGrid {
  private readonly words: Int32Array;
  /** words in a row */
  private readonly across: number;
  private readonly capsule: CapsuleRows;
  /** the rows that may be covered */
  private first: number;
  private last = -1;

  /** @param cell side of a cell, mm; the first one's corner is at 0, 0 */
  constructor(
    columns: number,
    private readonly rows: number,
    cell: number,
  ) {
    this.across = Math.ceil(columns / 32);
    this.words = new Int32Array(rows * this.across);
    this.capsule = new CapsuleRows(columns, rows, cell, cell);
    this.first = rows;
  }

  /** Covers every cell whose center lies within the radius of the segment from x0, y0 to x1, y1; mm. */
  add(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    const { words, across, capsule } = this;
    capsule.ofSegment(x0, y0, x1, y1, radius);
    const { first, last, from, to } = capsule;
    if (first > last) return;
    if (first < this.first) this.first = first;
    if (last > this.last) this.last = last;
    for (let row = first; row <= last; row++) {
      const low = from[row];
      const high = to[row];
      if (high < low) continue;
      const end = row * across + (high >> 5);
      // from the bit of the first column up, and in the last word up to that of the last
      let mask = -1 << (low & 31);
      for (let at = row * across + (low >> 5); at < end; at++) {
        words[at] |= mask;
        mask = -1;
      }
      words[end] |= mask & (-1 >>> (31 - (high & 31)));
    }
  }

  /** Lays what is covered over another grid of the same size and begins anew: how many cells it is, and how many of them were not covered there. */
  layOver(other: MarkGrid): { readonly covered: number; readonly fresh: number } {
    const { words, across } = this;
    const theirs = other.words;
    let covered = 0;
    let fresh = 0;
    const end = (this.last + 1) * across;
    for (let at = this.first * across; at < end; at++) {
      const own = words[at];
      if (own === 0) continue;
      covered += bits(own);
      fresh += bits(own & ~theirs[at]);
      theirs[at] |= own;
      words[at] = 0;
    }
    this.first = this.rows;
    this.last = -1;
    return { covered, fresh };
  }

  clear(): void {
    this.words.fill(0);
  }
}
