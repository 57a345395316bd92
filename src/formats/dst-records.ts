import { X_STEPS, Y_STEPS } from './dst-digits.js';
import { CHANGE, JUMP, STITCH } from './stitch-file.js';
import type { StitchPen } from './stitch-pen.js';

/** Kinds and moves of DST records, three bytes each; see StitchFile for what they mean. */
export function decodeRecords(records: Uint8Array): { kinds: Uint8Array; moves: Int16Array } {
  const count = Math.floor(records.length / 3);
  const kinds = new Uint8Array(count);
  const moves = new Int16Array(2 * count);
  for (let i = 0, at = 0; i < count; i++, at += 3) {
    const kind = kindOf(records[at + 2]);
    kinds[i] = kind;
    if (kind === CHANGE) continue;
    moves[2 * i] = X_STEPS[records[at]] + X_STEPS[256 + records[at + 1]] + X_STEPS[512 + records[at + 2]];
    moves[2 * i + 1] = Y_STEPS[records[at]] + Y_STEPS[256 + records[at + 1]] + Y_STEPS[512 + records[at + 2]];
  }
  return { kinds, moves };
}

/**
 * Bit 7 is a jump, bits 7 and 6 a color change. Bit 6 alone switches a device other than the needle (from memory), so
 * such a record moves and does not pierce.
 */
function kindOf(lastByte: number): number {
  const bits = lastByte & 0xc0;
  if (bits === 0) return STITCH;
  return bits === 0xc0 ? CHANGE : JUMP;
}

/** Sews records over again. */
export function replay(records: Uint8Array, pen: Omit<StitchPen, 'keep'>): void {
  const { kinds, moves } = decodeRecords(records);
  for (let i = 0; i < kinds.length; i++) {
    if (kinds[i] === STITCH) pen.stitch(moves[2 * i], moves[2 * i + 1]);
    else if (kinds[i] === JUMP) pen.jump(moves[2 * i], moves[2 * i + 1]);
    else pen.change();
  }
}

/** Where the needle is after all records, in steps from where it was before them, y up. */
export function wholeMove(records: Uint8Array): [dx: number, dy: number] {
  const { moves } = decodeRecords(records);
  let dx = 0;
  let dy = 0;
  for (let i = 0; i < moves.length; i += 2) {
    dx += moves[i];
    dy += moves[i + 1];
  }
  return [dx, dy];
}
