/** Every tolerance of the project: a name, a value in mm or radians, and its reason. */

/** Ends nearer than this are meant to meet. Three threads of cloth; the eye cannot place a line better on a drawing. */
export const SNAP = 0.3;
/** Lines within SNAP of each other for longer than this are one line; shorter, they only touch or cross. */
export const DOUBLED_RUN = 1;
/** Flattened curves stray at most this far from the true curve: a fiftieth of the machine's step. */
export const FLATTEN_SAG = 0.002;
/** Flattened curves turn at most this much from chord to chord, which keeps lengths true to 0.001 %. */
export const FLATTEN_TURN = (0.8 * Math.PI) / 180;
/** An arm's direction at a junction is the chord to the point this far along it. */
export const ARM_CHORD = 2;
/** Fairing moves a line at most this far: one machine step. */
export const FAIRING = 0.1;
/** A vertex that turns less than this is never a corner. */
export const CORNER_TURN = (25 * Math.PI) / 180;
/** Turns within this distance along the line decide whether a vertex stands out as a corner. */
export const CORNER_WINDOW = 5;
/** Two points nearer than this are the same point (rounding noise of double arithmetic on a 1 m block is 1e-13). */
export const SAME_POINT = 1e-6;
/** A flattened curve's length is true to this share: a tenth of what lengths may err. */
export const FLATTEN_LENGTH = 1e-5;
