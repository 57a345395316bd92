/** Lines that cross at less than this angle lie along each other: passes of one leg. */
const ALONG = Math.sin((15 * Math.PI) / 180);
/** A piece never grows longer than this many stitches, so that looking for crossings stays cheap. */
const LONGEST = 48;

/**
 * Cuts a line of needle points where it comes to lie over itself, so that each piece can be drawn over the ones sewn
 * before it. Returns the index of each piece's first point, ascending, the end of the last piece behind them; a piece
 * ends on the point on which the next begins.
 */
export function sewnPieces(xy: Float64Array, from: number, to: number): number[] {
  const cuts = [from];
  let start = from;
  for (let i = from + 1; i < to - 1; i++) {
    if (i - start >= LONGEST || crossesEarlier(xy, start, i)) {
      cuts.push(i);
      start = i;
    }
  }
  cuts.push(Math.max(from, to - 1));
  return cuts;
}

/** Whether the stitch from point i crosses one of the stitches from `start` on that it does not follow directly. */
function crossesEarlier(xy: Float64Array, start: number, i: number): boolean {
  const px = xy[2 * i];
  const py = xy[2 * i + 1];
  const dx = xy[2 * i + 2] - px;
  const dy = xy[2 * i + 3] - py;
  const long = Math.hypot(dx, dy);
  for (let j = start; j < i - 1; j++) {
    const ax = xy[2 * j] - px;
    const ay = xy[2 * j + 1] - py;
    const bx = xy[2 * j + 2] - px;
    const by = xy[2 * j + 3] - py;
    const sideA = dx * ay - dy * ax;
    const sideB = dx * by - dy * bx;
    if (sideA * sideB >= 0) continue;
    const ex = bx - ax;
    const ey = by - ay;
    const sine = dx * ey - dy * ex;
    if (Math.abs(sine) < ALONG * long * Math.hypot(ex, ey)) continue;
    const t = (ax * ey - ay * ex) / sine;
    if (t > 0 && t < 1) return true;
  }
  return false;
}
