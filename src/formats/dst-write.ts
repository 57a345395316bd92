import { CHANGE_CODE, END_CODE, JUMP_CODE, LONGEST_MOVE, STITCH_CODE, X_CODE, Y_CODE } from './dst-digits.js';
import { dstHeader, HEADER_LENGTH } from './dst-header.js';
import { decodeRecords } from './dst-records.js';
import { CHANGE } from './stitch-file.js';
import type { StitchPen } from './stitch-pen.js';

/**
 * Writes a DST stitch file: moves are appended as they come, the header is made at the end from what was written.
 * A move longer than 121 steps along an axis is a RangeError: whoever draws to a pen splits first.
 */
export class DstWriter implements StitchPen {
  private bytes: Uint8Array;
  private length = HEADER_LENGTH;
  private changes = 0;
  private x = 0;
  private y = 0;
  private left = 0;
  private right = 0;
  private below = 0;
  private above = 0;

  /** `expected` is a guess at the number of records; the space grows as needed. */
  constructor(expected = 4096) {
    this.bytes = new Uint8Array(HEADER_LENGTH + 3 * (expected + 1));
  }

  stitch(dx: number, dy: number): void {
    this.move(dx, dy, STITCH_CODE);
  }

  jump(dx: number, dy: number): void {
    this.move(dx, dy, JUMP_CODE);
  }

  change(): void {
    this.changes++;
    this.append(CHANGE_CODE);
  }

  keep(records: Uint8Array): void {
    this.reserve(records.length);
    this.bytes.set(records, this.length);
    this.length += records.length;
    const { kinds, moves } = decodeRecords(records);
    for (let i = 0; i < kinds.length; i++) {
      if (kinds[i] === CHANGE) this.changes++;
      this.reach(moves[2 * i], moves[2 * i + 1]);
    }
  }

  /** The records so far, three bytes each. */
  records(): Uint8Array {
    return this.bytes.slice(HEADER_LENGTH, this.length);
  }

  /**
   * The whole file: header, records, end mark.
   * @throws InputError when there are more records or changes, or a wider reach, than the header can tell
   */
  file(name: string): Uint8Array {
    const header = dstHeader(name, {
      records: (this.length - HEADER_LENGTH) / 3,
      changes: this.changes,
      left: this.left,
      right: this.right,
      below: this.below,
      above: this.above,
      endX: this.x,
      endY: this.y,
    });
    const file = new Uint8Array(this.length + 3);
    file.set(this.bytes.subarray(0, this.length));
    file.set(header);
    file[this.length + 2] = END_CODE;
    return file;
  }

  private move(dx: number, dy: number, code: number): void {
    const xCode = X_CODE[dx + LONGEST_MOVE];
    const yCode = Y_CODE[dy + LONGEST_MOVE];
    if (xCode === undefined || yCode === undefined) {
      throw new RangeError(`a move of ${dx}, ${dy} steps; a record holds whole steps from -121 to 121`);
    }
    this.append(code | xCode | yCode);
    this.reach(dx, dy);
  }

  private reach(dx: number, dy: number): void {
    this.x += dx;
    this.y += dy;
    if (this.x < this.left) this.left = this.x;
    else if (this.x > this.right) this.right = this.x;
    if (this.y < this.below) this.below = this.y;
    else if (this.y > this.above) this.above = this.y;
  }

  private append(code: number): void {
    if (this.length + 3 > this.bytes.length) this.reserve(3);
    this.bytes[this.length++] = code >> 16;
    this.bytes[this.length++] = code >> 8;
    this.bytes[this.length++] = code;
  }

  private reserve(more: number): void {
    if (this.length + more <= this.bytes.length) return;
    const wider = new Uint8Array(Math.max(2 * this.bytes.length, this.length + more));
    wider.set(this.bytes.subarray(0, this.length));
    this.bytes = wider;
  }
}
