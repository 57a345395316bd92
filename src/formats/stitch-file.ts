/** A stitch file as plain records: what a reader gives, whatever the bytes looked like. */
export interface StitchFile {
  /** name in the header, trimmed */
  readonly label: string;
  /** kind of record i */
  readonly kinds: Uint8Array;
  /** move of record i: dx, dy in steps of 0.1 mm, y up; 0, 0 on a color change */
  readonly moves: Int16Array;
  /** the records as they stand in the file, three bytes each, without header and end mark */
  readonly records: Uint8Array;
}

export const STITCH = 0;
export const JUMP = 1;
export const CHANGE = 2;
