import { bits, bitsByByte, sumOfBytes } from './bits.js';
import { CapsuleRows } from './capsule-rows.js';

/** Columns in a word. */
const WORD = 32;
/** Layers above the first are told in binary numbers of so many digits; what lies deeper is told as deep as they go. */
const PLANES = 16;
/** The deepest that is told. */
export const DEEPEST = 1 << PLANES;

/**
 * Square blocks of cells, row by row, and how many capsules cover the center of each cell. A block is 32 cells wide, so that
 * its rows are words with a bit for each cell: `under` has the cells that are covered at all, and how often more than once
 * stands in planes, the n-th of which has the n-th binary digit for every cell. 32 cells are counted at a time, and most are
 * covered but a few times, so that most planes are never touched. Words of a block stand together, as what is sewn does.
 */
export class LayerGrid {
  /** block by block, row by row */
  private under: Int32Array;
  /** plane by plane, each as `under` */
  private above: Int32Array;
  /** planes that may have anything */
  private planes = 0;
  /** the rows and columns of blocks that may be covered */
  top: number;
  bottom = -1;
  left: number;
  right = -1;
  /** 1 for blocks that may be covered */
  private touched: Uint8Array;
  private readonly capsule: CapsuleRows;
  /** by row, where its word of the first block stands */
  private readonly starts: Int32Array;

  /**
   * @param across blocks side by side, and one below another
   * @param size side of a block, mm; the first one's corner is at 0, 0
   * @param high rows of a block, at most 31
   */
  constructor(
    private readonly across: number,
    private readonly size: number,
    private readonly high: number,
  ) {
    const words = across * across * high;
    this.under = new Int32Array(words);
    this.above = new Int32Array(PLANES * words);
    this.touched = new Uint8Array(across * across);
    this.capsule = new CapsuleRows(across * WORD, across * high, size / WORD, size / high);
    this.starts = Int32Array.from(
      { length: across * high },
      (_, row) => Math.floor(row / high) * across * high + (row % high),
    );
    this.top = across;
    this.left = across;
  }

  /** Whether nothing is covered. */
  get isBare(): boolean {
    return this.bottom < this.top;
  }

  /** Lays a capsule, all within the radius of the segment from x0, y0 to x1, y1, on what is there; mm. */
  add(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    const { under, above, capsule, starts, high: step } = this;
    capsule.ofSegment(x0, y0, x1, y1, radius);
    const { first, last, from, to } = capsule;
    if (first > last) return;
    this.reach(x0, y0, x1, y1, radius);
    const words = under.length;
    let highest = 0;
    for (let row = first; row <= last; row++) {
      const low = from[row];
      const high = to[row];
      if (high < low) continue;
      const start = starts[row];
      const end = start + (high >> 5) * step;
      // from the bit of the first column up, and in the last word up to that of the last
      let mask = -1 << (low & 31);
      for (let at = start + (low >> 5) * step; at <= end; at += step) {
        if (at === end) mask &= -1 >>> (31 - (high & 31));
        const before = under[at];
        under[at] = before | mask;
        let carry = before & mask;
        mask = -1;
        if (carry === 0) continue;
        let plane = at;
        for (; carry !== 0 && plane < above.length; plane += words) {
          const digit = above[plane];
          above[plane] = digit ^ carry;
          carry &= digit;
        }
        if (carry !== 0) this.fill(at, carry);
        if (plane > highest) highest = plane;
      }
    }
    const planes = Math.floor(highest / words);
    if (planes > this.planes) this.planes = planes;
  }

  /** Lays on a block what another grid of the same size has there. */
  addBlock(block: number, own: LayerGrid): void {
    const { under, above } = this;
    const words = under.length;
    for (let at = block * this.high; at < (block + 1) * this.high; at++) {
      const covered = own.under[at];
      if (covered === 0) continue;
      // a cell that is covered here and there is covered once more than the planes of both tell
      let carry = under[at] & covered;
      under[at] |= covered;
      let plane = 0;
      for (; plane < PLANES && (plane < own.planes || carry !== 0); plane++) {
        const k = plane * words + at;
        const mine = above[k];
        const theirs = own.above[k];
        above[k] = mine ^ theirs ^ carry;
        carry = (mine & theirs) | (carry & (mine ^ theirs));
      }
      if (carry !== 0) this.fill(at, carry);
      if (plane > this.planes) this.planes = plane;
    }
    const [row, column] = [Math.floor(block / this.across), block % this.across];
    this.touch(column, column, row, row);
  }

  /** Whether anything may be covered in a block. */
  isTouched(block: number): boolean {
    return this.touched[block] !== 0;
  }

  /** Adds so many to `cells[n]` for every cell of a block under n layers; how many cells are covered, and their layers, summed. */
  tell(block: number, cells: Int32Array, add: number): { readonly covered: number; readonly layers: number } {
    const { under, above, planes, high } = this;
    const words = under.length;
    let all = 0;
    let one = 0;
    let two = 0;
    let three = 0;
    let deeper = 0;
    let layers = 0;
    // the two lowest digits at once, for most thread lies no deeper
    for (let at = block * high; at < (block + 1) * high; at++) {
      const covered = under[at];
      if (covered === 0) continue;
      let deep = 0;
      for (let k = at + 2 * words; k < planes * words; k += words) deep |= above[k];
      if (deep !== 0) {
        deeper += bits(deep);
        layers += this.tellPlanes(at, deep, 1, planes, cells, add);
      }
      const rest = covered & ~deep;
      const ones = above[at] & rest;
      const twos = above[at + words] & rest;
      all += bitsByByte(rest);
      one += bitsByByte(ones);
      two += bitsByByte(twos);
      three += bitsByByte(ones & twos);
    }
    all = sumOfBytes(all);
    if (all === 0) return { covered: deeper, layers };
    three = sumOfBytes(three);
    one = sumOfBytes(one) - three;
    two = sumOfBytes(two) - three;
    cells[1] += add * (all - one - two - three);
    cells[2] += add * one;
    cells[3] += add * two;
    cells[4] += add * three;
    return { covered: all + deeper, layers: layers + all + one + 2 * two + 3 * three };
  }

  /** The same for the cells of a word that are in a mask, under `least` layers and those that the planes tell. */
  private tellPlanes(
    at: number,
    mask: number,
    least: number,
    planes: number,
    cells: Int32Array,
    add: number,
  ): number {
    if (planes === 0) {
      const all = bits(mask);
      cells[least] += add * all;
      return least * all;
    }
    const next = planes - 1;
    const deep = this.above[next * this.under.length + at] & mask;
    const rest = mask & ~deep;
    return (
      (deep === 0 ? 0 : this.tellPlanes(at, deep, least + (1 << next), next, cells, add)) +
      (rest === 0 ? 0 : this.tellPlanes(at, rest, least, next, cells, add))
    );
  }

  /** More layers than there are anywhere. */
  get deepest(): number {
    return Math.max(4, 1 << this.planes);
  }

  /** What this one has the other has, and the other way about. */
  swap(other: LayerGrid): void {
    [this.under, other.under] = [other.under, this.under];
    [this.above, other.above] = [other.above, this.above];
    [this.touched, other.touched] = [other.touched, this.touched];
    [this.planes, other.planes] = [other.planes, this.planes];
    [this.top, other.top] = [other.top, this.top];
    [this.bottom, other.bottom] = [other.bottom, this.bottom];
    [this.left, other.left] = [other.left, this.left];
    [this.right, other.right] = [other.right, this.right];
  }

  /** Begins anew with nothing covered. */
  clear(): void {
    const { under, above, across, high, planes } = this;
    const words = under.length;
    for (let row = this.top; row <= this.bottom; row++) {
      const [from, to] = [row * across + this.left, row * across + this.right + 1];
      this.touched.fill(0, from, to);
      under.fill(0, from * high, to * high);
      for (let at = 0; at < planes * words; at += words) above.fill(0, at + from * high, at + to * high);
    }
    this.planes = 0;
    this.top = across;
    this.bottom = -1;
    this.left = across;
    this.right = -1;
  }

  /** As deep as can be told. */
  private fill(at: number, cells: number): void {
    for (let k = at; k < this.above.length; k += this.under.length) this.above[k] |= cells;
  }

  private reach(x0: number, y0: number, x1: number, y1: number, radius: number): void {
    const { size } = this;
    const most = this.across - 1;
    const left = Math.max(0, Math.floor((Math.min(x0, x1) - radius) / size) | 0);
    const right = Math.min(most, Math.floor((Math.max(x0, x1) + radius) / size) | 0);
    const top = Math.max(0, Math.floor((Math.min(y0, y1) - radius) / size) | 0);
    const bottom = Math.min(most, Math.floor((Math.max(y0, y1) + radius) / size) | 0);
    this.touch(left, right, top, bottom);
  }

  private touch(left: number, right: number, top: number, bottom: number): void {
    const { touched, across } = this;
    for (let row = top; row <= bottom; row++) {
      for (let block = row * across + left; block <= row * across + right; block++) touched[block] = 1;
    }
    this.left = Math.min(this.left, left);
    this.right = Math.max(this.right, right);
    this.top = Math.min(this.top, top);
    this.bottom = Math.max(this.bottom, bottom);
  }
}
