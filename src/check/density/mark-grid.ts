import { CapsuleRows } from './capsule-rows.js';

/** A rectangle of cells that are covered by some capsule or by none: a bit for each, 32 in a word, words row by row. */
export class MarkGrid {
  private readonly words: Int32Array;
  /** words in a row */
  readonly across: number;
  private readonly capsule: CapsuleRows;
  /** the rows that may be covered */
  private first: number;
  private last = -1;

  /**
   * @param wide of a cell, mm; the first one's corner is at 0, 0
   * @param high of a cell, mm
   */
  constructor(
    columns: number,
    private readonly rows: number,
    wide: number,
    high: number,
  ) {
    this.across = Math.ceil(columns / 32);
    this.words = new Int32Array(rows * this.across);
    this.capsule = new CapsuleRows(columns, rows, wide, high);
    this.first = rows;
  }

  /** Covers every cell whose center lies within the radius of the segment from x0, y0 to x1, y1; mm. */
  add(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    const { words, across, capsule } = this;
    capsule.ofSegment(x0, y0, x1, y1, radius);
    const { first, last, from, to } = capsule;
    if (first > last) return;
    this.first = Math.min(this.first, first);
    this.last = Math.max(this.last, last);
    for (let row = first; row <= last; row++) {
      const low = from[row];
      const high = to[row];
      if (high < low) continue;
      const at = row * across;
      const begin = low >> 5;
      const end = high >> 5;
      // from the bit of the first column up, and up to that of the last
      const head = -1 << (low & 31);
      const tail = -1 >>> (31 - (high & 31));
      if (begin === end) {
        words[at + begin] |= head & tail;
        continue;
      }
      words[at + begin] |= head;
      for (let word = begin + 1; word < end; word++) words[at + word] = -1;
      words[at + end] |= tail;
    }
  }

  /**
   * Lays what is covered over another grid of the same size and begins anew. Tells of each word of which anything is covered
   * how many cells it is, and how many of them were not covered there.
   */
  layOver(other: MarkGrid, tell: (row: number, word: number, covered: number, fresh: number) => void): void {
    const { words, across } = this;
    const theirs = other.words;
    for (let row = this.first; row <= this.last; row++) {
      for (let word = 0, at = row * across; word < across; word++, at++) {
        const own = words[at];
        if (own === 0) continue;
        const before = theirs[at];
        tell(row, word, bits(own), bits(own & ~before));
        theirs[at] = before | own;
        words[at] = 0;
      }
    }
    this.first = this.rows;
    this.last = -1;
  }

  clear(): void {
    this.words.fill(0);
  }
}

/** How many bits of a word are set, two by two, four by four, and so on (Warren, "Hacker's Delight", from memory). */
function bits(word: number): number {
  let sums = word - ((word >>> 1) & 0x55555555);
  sums = (sums & 0x33333333) + ((sums >>> 2) & 0x33333333);
  sums = (sums + (sums >>> 4)) & 0x0f0f0f0f;
  return Math.imul(sums, 0x01010101) >>> 24;
}
