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
  const pairs = pairsOfHoles();
  /** for each stitch the number of its pair of holes; for each pair how many stitches it has, and how many are laid */
  const pairOf = new Int32Array(xy.length >> 1).fill(ALONE);
  const total: number[] = [];
  const laid: number[] = [];
  for (let r = 0; r + 1 < start.length; r++) {
    for (let i = start[r]; i + 1 < start[r + 1]; i++) {
      const pair = pairs(xy, i);
      pairOf[i] = pair;
      if (pair === ALONE) continue;
      total[pair] = (total[pair] ?? 0) + 1;
      laid[pair] = 0;
    }
  }
  const points: number[] = [];
  const starts = [0];
  for (let r = 0; r + 1 < start.length; r++) {
    for (let i = start[r]; i < start[r + 1]; i++) {
      points.push(xy[2 * i], xy[2 * i + 1]);
      const pair = pairOf[i];
      if (pair === ALONE || total[pair] === 1) continue;
      const of = total[pair];
      const turn = laid[pair]++;
      aside(points, xy, i, (turn - (of - 1) / 2) * Math.min(BESIDE, WIDEST / (of - 1)));
    }
    starts.push(points.length / 2);
  }
  return { xy: Float64Array.from(points), start: Int32Array.from(starts) };
}

/** Of a stitch too short to lie aside, and of a last point. */
const ALONE = -1;
/** Numbers of holes, and coordinates in units of one hole, stay below half of this. */
const WIDE = 2 ** 26;

/** Numbers the pairs of holes between which stitches go, one for both directions. */
function pairsOfHoles(): (xy: Float64Array, i: number) => number {
  const holes = new Map<number, number>();
  const pairs = new Map<number, number>();
  const numberOf = (numbers: Map<number, number>, key: number): number => {
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, numbers.size);
    return numbers.size - 1;
  };
  const hole = (x: number, y: number) =>
    numberOf(holes, Math.round(x / SAME_HOLE) * WIDE + Math.round(y / SAME_HOLE));
  return (xy, i) => {
    const x0 = xy[2 * i];
    const y0 = xy[2 * i + 1];
    const x1 = xy[2 * i + 2];
    const y1 = xy[2 * i + 3];
    if (Math.hypot(x1 - x0, y1 - y0) < SHORTEST) return ALONE;
    const a = hole(x0, y0);
    const b = hole(x1, y1);
    return numberOf(pairs, a < b ? a * WIDE + b : b * WIDE + a);
  };
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
