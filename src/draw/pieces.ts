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
  const boxes = boxesOf(xy, from, to);
  let start = from;
  for (let i = from + 1; i < to - 1; i++) {
    const crossed = lastCrossed(xy, start, i, boxes);
    if (crossed < 0 && i - start < LONGEST) continue;
    start = sharpest(xy, crossed < 0 ? i - LONGEST / 2 : crossed + 1, i);
    cuts.push(start);
  }
  cuts.push(Math.max(from, to - 1));
  return cuts;
}

/** Stitches that follow each other share a box. */
const TOGETHER = 8;

/** The boxes of stitches, so many together, from point `from` on: least x, y, most x, y of each. */
interface Boxes {
  readonly from: number;
  readonly of: Float64Array;
}

function boxesOf(xy: Float64Array, from: number, to: number): Boxes {
  const count = Math.max(0, Math.ceil((to - 1 - from) / TOGETHER));
  const boxes = new Float64Array(4 * count);
  for (let box = 0; box < count; box++) {
    const first = from + box * TOGETHER;
    const last = Math.min(first + TOGETHER, to - 1);
    let minX = xy[2 * first];
    let minY = xy[2 * first + 1];
    let maxX = minX;
    let maxY = minY;
    for (let k = first + 1; k <= last; k++) {
      const x = xy[2 * k];
      const y = xy[2 * k + 1];
      if (x < minX) minX = x;
      else if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      else if (y > maxY) maxY = y;
    }
    boxes[4 * box] = minX;
    boxes[4 * box + 1] = minY;
    boxes[4 * box + 2] = maxX;
    boxes[4 * box + 3] = maxY;
  }
  return { from, of: boxes };
}

/** The last stitch, named by its first point, from `start` on that the stitch from point i crosses; -1 if none. */
function lastCrossed(xy: Float64Array, start: number, i: number, { from, of: boxes }: Boxes): number {
  const px = xy[2 * i];
  const py = xy[2 * i + 1];
  const dx = xy[2 * i + 2] - px;
  const dy = xy[2 * i + 3] - py;
  const left = Math.min(px, xy[2 * i + 2]);
  const right = Math.max(px, xy[2 * i + 2]);
  const top = Math.min(py, xy[2 * i + 3]);
  const bottom = Math.max(py, xy[2 * i + 3]);
  for (let j = i - 2; j >= start; ) {
    const box = Math.floor((j - from) / TOGETHER);
    const first = Math.max(start, from + box * TOGETHER);
    const b = 4 * box;
    if (boxes[b] > right || boxes[b + 2] < left || boxes[b + 1] > bottom || boxes[b + 3] < top) {
      j = first - 1;
      continue;
    }
    let bx = xy[2 * j + 2] - px;
    let by = xy[2 * j + 3] - py;
    let sideOfB = dx * by - dy * bx;
    for (; j >= first; j--) {
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
