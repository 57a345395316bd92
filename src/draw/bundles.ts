import type { Runs } from '../needle/run.js';

/** Passes that share both holes lie beside each other this far apart, mm: half a thread of No. 40 sinks between two. */
const BESIDE = 0.2;
/** However many passes there are, they heap up rather than spread wider than this, mm. */
const WIDEST = 0.4;
/** Shorter stitches, such as ties, lie on top of each other. */
const SHORTEST = 1.4;
/** Thread leaves its hole and lies full aside after this length, mm, or this share of the stitch. */
const INSET = 0.9;
const INSET_SHARE = 0.3;
/** Holes nearer than this are one hole. */
const SAME_HOLE = 0.02;

/**
 * Runs as thread really lies: where several stitches go between the same two holes, no two can lie in one place, and
 * each gets its own line beside the others. Points are added between such holes; all else stays. Linear.
 */
export function bundled({ xy, start }: Runs): Runs {
  const total = new Map<string, number>();
  const keys: (string | null)[] = [];
  for (let r = 0; r + 1 < start.length; r++) {
    for (let i = start[r]; i + 1 < start[r + 1]; i++) {
      const key = stitchKey(xy, i);
      keys[i] = key;
      if (key) total.set(key, (total.get(key) ?? 0) + 1);
    }
  }
  const laid = new Map<string, number>();
  const points: number[] = [];
  const starts = [0];
  for (let r = 0; r + 1 < start.length; r++) {
    for (let i = start[r]; i < start[r + 1]; i++) {
      points.push(xy[2 * i], xy[2 * i + 1]);
      const key = i + 1 < start[r + 1] ? keys[i] : null;
      const of = key ? total.get(key)! : 1;
      if (!key || of === 1) continue;
      const turn = laid.get(key) ?? 0;
      laid.set(key, turn + 1);
      aside(points, xy, i, (turn - (of - 1) / 2) * Math.min(BESIDE, WIDEST / (of - 1)));
    }
    starts.push(points.length / 2);
  }
  return { xy: Float64Array.from(points), start: Int32Array.from(starts) };
}

/** One name for both directions between two holes; null for a stitch too short to lie aside. */
function stitchKey(xy: Float64Array, i: number): string | null {
  const [x0, y0, x1, y1] = xy.subarray(2 * i, 2 * i + 4);
  if (Math.hypot(x1 - x0, y1 - y0) < SHORTEST) return null;
  const hole = (x: number, y: number) => `${Math.round(x / SAME_HOLE)},${Math.round(y / SAME_HOLE)}`;
  const [a, b] = [hole(x0, y0), hole(x1, y1)];
  return a < b ? `${a};${b}` : `${b};${a}`;
}

/** Adds the two points between which a stitch lies `by` mm beside the line between its holes. */
function aside(points: number[], xy: Float64Array, i: number, by: number): void {
  const [x0, y0, x1, y1] = xy.subarray(2 * i, 2 * i + 4);
  const length = Math.hypot(x1 - x0, y1 - y0);
  const [tx, ty] = [(x1 - x0) / length, (y1 - y0) / length];
  // The side is that of the pair of holes, not of the direction sewn, so that passes there and back do not meet.
  const side = x0 < x1 || (x0 === x1 && y0 < y1) ? by : -by;
  const inset = Math.min(INSET, INSET_SHARE * length);
  for (const along of [inset, length - inset]) {
    points.push(x0 + along * tx + side * ty, y0 + along * ty - side * tx);
  }
}
