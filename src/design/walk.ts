/** Pieces to be sewn one after another, each from its start to its end, with a jump from one to the next. */
export interface Walk {
  /** start and end of each piece: x0 y0 x1 y1, mm */
  readonly ends: Float64Array;
  /** for each piece those that have to be sewn before it; all of them stand before it in the order given */
  readonly earlier: readonly (readonly number[])[];
}

/** The order in which pieces are given, which keeps all that is asked. */
export const legalOrder = ({ earlier }: Walk): Int32Array => Int32Array.from(earlier.keys());

/**
 * The jump from where one piece ends to where another starts, in whole thousandths of a millimeter: jumps that are
 * alike are equal then, however the block lies, and a turned or mirrored block is walked as the block is.
 */
export function jumpBetween(ends: Float64Array, from: number, to: number): number {
  const dx = ends[4 * to] - ends[4 * from + 2];
  const dy = ends[4 * to + 1] - ends[4 * from + 3];
  return Math.round(1000 * Math.sqrt(dx * dx + dy * dy));
}

/** Length of the jumps between pieces sewn in an order, mm. */
export function walkLength({ ends }: Walk, order: ArrayLike<number>): number {
  let length = 0;
  for (let i = 1; i < order.length; i++) {
    const [a, b] = [4 * order[i - 1], 4 * order[i]];
    length += Math.hypot(ends[b] - ends[a + 2], ends[b + 1] - ends[a + 3]);
  }
  return length;
}

/** For each piece those that have to be sewn after it. */
export function laterOf({ earlier }: Walk): number[][] {
  const later = earlier.map((): number[] => []);
  earlier.forEach((pieces, piece) => {
    for (const before of pieces) later[before].push(piece);
  });
  return later;
}
