/**
 * The line a stitch follows, as samples dense enough that position and direction between two of them are linear.
 * `u` is arc length from the start; a corner stands in twice, with one u and two directions. Directions are radians,
 * continuous between corners (unwrapped). A closed line ends where it starts: its last sample repeats the first
 * point, at u = length.
 */
export interface GuideLine {
  readonly length: number;
  readonly closed: boolean;
  readonly u: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly theta: Float64Array;
  readonly corners: readonly Corner[];
}

/** A sharp turn inside a line. `turn` is in radians, positive to the left as seen on the drawn page. */
export interface Corner {
  readonly u: number;
  readonly turn: number;
}

/** Whether a line leads in one direction from end to end. */
export const isStraight = ({ corners, theta }: GuideLine): boolean =>
  corners.length === 0 && theta.every((one) => Math.abs(one - theta[0]) < 1e-9);
