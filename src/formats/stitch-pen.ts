/**
 * What a design is sewn to: a writer of stitch files, a counter, or a test. Moves are in whole steps of 0.1 mm, y up,
 * relative, at most 121 along each axis.
 */
export interface StitchPen {
  /** moves, then pierces */
  stitch(dx: number, dy: number): void;
  /** moves only */
  jump(dx: number, dy: number): void;
  /** the machine halts for another thread */
  change(): void;
  /** records of another stitch file, three bytes each, as they stand there */
  keep(records: Uint8Array): void;
}
