/** Lines that cross at less than this angle lie along each other: passes of one leg. */
const ALONG = Math.sin((15 * Math.PI) / 180);
/** A piece never grows longer than this many stitches, so that looking for crossings stays cheap. */
const LONGEST = 48;
/** Thread that turns less than this is one line to the eye, and a cut there would show. */
const SHARP = Math.cos((60 * Math.PI) / 180);

/**
 * Cuts a line of needle points where it comes to lie over itself, so that each piece can be drawn over the ones sewn
 * before it. Cuts fall where thread turns sharply, at the ends of legs, if they can. Returns the index of each piece's
 * first point, ascending, the end of the last piece behind them; a piece ends on the point on which the next begins.
 */
export function sewnPieces(xy: Float64Array, from: number, to: number): number[] {
  const cuts = [from];
  let start = from;
  for (let i = from + 1; i < to - 1; i++) {
    const crossed = lastCrossed(xy, start, i);
    if (crossed < 0 && i - start < LONGEST) continue;
    start = sharpest(xy, crossed < 0 ? i - LONGEST / 2 : crossed + 1, i);
    cuts.push(start);
  }
  cuts.push(Math.max(from, to - 1));
  return cuts;
}

/** The last stitch, named by its first point, from `start` on that the stitch from point i crosses; -1 if none. */
function lastCrossed(xy: Float64Array, start: number, i: number): number {
  const px = xy[2 * i];
  const py = xy[2 * i + 1];
  const dx = xy[2 * i + 2] - px;
  const dy = xy[2 * i + 3] - py;
  let bx = xy[2 * i - 2] - px;
  let by = xy[2 * i - 1] - py;
  let sideOfB = dx * by - dy * bx;
  for (let j = i - 2; j >= start; j--) {
    const ax = xy[2 * j] - px;
    const ay = xy[2 * j + 1] - py;
    const sideOfA = dx * ay - dy * ax;
    const isBeside = sideOfA * sideOfB >= 0;
    const ex = bx - ax;
    const ey = by - ay;
    bx = ax;
    by = ay;
    sideOfB = sideOfA;
    if (isBeside) continue;
    const sine = dx * ey - dy * ex;
    if (Math.abs(sine) < ALONG * Math.hypot(dx, dy) * Math.hypot(ex, ey)) continue;
    const t = (ax * ey - ay * ex) / sine;
    if (t > 0 && t < 1) return j;
  }
  return -1;
}

/** The point from a to b where the thread turns most sharply, the later of equals; b where it never turns sharply. */
function sharpest(xy: Float64Array, a: number, b: number): number {
  let best = b;
  let least = SHARP;
  for (let k = a; k <= b; k++) {
    const dx = xy[2 * k] - xy[2 * k - 2];
    const dy = xy[2 * k + 1] - xy[2 * k - 1];
    const ex = xy[2 * k + 2] - xy[2 * k];
    const ey = xy[2 * k + 3] - xy[2 * k + 1];
    const cosine = (dx * ex + dy * ey) / (Math.hypot(dx, dy) * Math.hypot(ex, ey));
    if (cosine <= least) {
      least = cosine;
      best = k;
    }
  }
  return best;
}
