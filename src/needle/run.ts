/** Needle points sewn without a jump: run i is points start[i] to start[i + 1] of `xy`; mm in the block's frame. */
export interface Runs {
  readonly xy: Float64Array;
  readonly start: Int32Array;
}

/** What sewing asks of the thread. */
export interface Craft {
  /** thread laid down, mm: No. 40 is 0.4 */
  readonly threadWidth: number;
  /** longest stitch on a straight hand-look leg, mm */
  readonly longest: number;
  /** shortest stitch, ties excepted, mm */
  readonly shortest: number;
  /** piercings one hole may get before needle points scatter */
  readonly holeLimit: number;
  /** between passes side by side, mm */
  readonly spread: number;
  /** how much wider satin is sewn to either side than it is to be, mm: thread draws the cloth together under it */
  readonly pull?: number;
}
