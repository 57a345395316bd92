import { boxOf } from '../geometry/box.js';
import { distance, type Point, wrapAngle } from '../geometry/point.js';
import { fromPoints } from '../geometry/polyline.js';

/** What a stretch of sewing is, which decides how it is sewn on a block of another size. */
export type SewnKind =
  /** plain stitches along a line */
  | 'line'
  /** zigzag or satin of one width along a line */
  | 'edge'
  /** a small thing that keeps its size: a knot, a petal, a bar tack */
  | 'figure'
  /** an area covered with thread */
  | 'fill';

/** Needle points `from` to `to` of a run are of one kind; neighbors share the point between them. */
export interface SewnPart {
  readonly kind: SewnKind;
  readonly from: number;
  readonly to: number;
}

/** A zigzag turns more than this at every needle point and comes down beside the hole before the last. */
const ZIGZAG_TURN = (60 * Math.PI) / 180;
/** Where it turns nearly about, rounding to the machine's steps may put the turn on either side. */
const NEARLY_ABOUT = (150 * Math.PI) / 180;
/** Rounding puts two piercings of one hole at most this far apart, mm. */
const SAME_HOLE = 0.15;
/** Fewer turns in a row are a tie or a crossing of a line. */
const LEAST_ZIGZAGS = 8;
/** An edge is at least so many times as long as wide, and nowhere wider than this many times its narrow places. */
const EDGE_LENGTH = 3;
const EDGE_EVENNESS = 1.6;
/** Wider, satin would snag: what is sewn so covers an area. 10 mm is common practice. */
const WIDEST_EDGE = 10;
/** Smaller in every direction, a thing is a figure, mm. Common practice: knots, petals, bar tacks. */
const FIGURE = 8;

/** The parts of a run, in order. What is no zigzag is a line here; whether lines fill an area is told by `isCovered`. */
export function partsOfRun(run: readonly Point[]): SewnPart[] {
  const parts: SewnPart[] = [];
  let done = 0;
  for (const { from, to } of zigzagsIn(run)) {
    if (from > done) parts.push({ kind: 'line', from: done, to: from });
    parts.push({ kind: kindOfZigzag(run.slice(from, to + 1)), from, to });
    done = to;
  }
  if (done < run.length - 1) parts.push({ kind: 'line', from: done, to: run.length - 1 });
  return parts;
}

function zigzagsIn(run: readonly Point[]): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = [];
  let start = -1;
  let side = 0;
  const end = (i: number) => {
    if (start >= 0 && i - start >= LEAST_ZIGZAGS) found.push({ from: start - 1, to: i });
    start = -1;
  };
  for (let i = 1; i + 1 < run.length; i++) {
    const turn = turnAt(run, i);
    const size = Math.abs(turn);
    const isZigzag = size > ZIGZAG_TURN && distance(run[i - 1], run[i + 1]) > SAME_HOLE;
    const alternates = start < 0 || size > NEARLY_ABOUT || Math.sign(turn) !== side;
    if (!isZigzag || !alternates) end(i);
    if (isZigzag && start < 0) start = i;
    if (isZigzag) side = size > NEARLY_ABOUT && start !== i ? -side : Math.sign(turn);
  }
  end(run.length - 1);
  return found;
}

function kindOfZigzag(points: readonly Point[]): SewnKind {
  const widths = points.slice(1).map((p, i) => distance(points[i], p));
  const middles = points
    .slice(1)
    .map((p, i): Point => [(p[0] + points[i][0]) / 2, (p[1] + points[i][1]) / 2]);
  const length = middles.slice(1).reduce((sum, p, i) => sum + distance(middles[i], p), 0);
  const sorted = [...widths].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))];
  const isEven = at(0.9) <= EDGE_EVENNESS * at(0.1) && at(0.5) <= WIDEST_EDGE;
  if (isEven && length >= EDGE_LENGTH * at(0.5)) return 'edge';
  return extentOf(points) <= FIGURE ? 'figure' : 'fill';
}

function extentOf(points: readonly Point[]): number {
  const { left, top, right, bottom } = boxOf([fromPoints(points)]);
  return Math.max(right - left, bottom - top);
}

/** Turn at a needle point, radians, by the sign of the cross product. */
export function turnAt(run: readonly Point[], i: number): number {
  const before = Math.atan2(run[i][1] - run[i - 1][1], run[i][0] - run[i - 1][0]);
  const after = Math.atan2(run[i + 1][1] - run[i][1], run[i + 1][0] - run[i][0]);
  return wrapAngle(after - before);
}

/** Cells of this size, mm, tell whether thread covers an area: rows of a fill lie 0.3 to 0.6 mm apart (common practice). */
const CELL = 0.8;
/** Lines, doubled ones and crossings too, are no three cells wide; this much that is, mm2, and this share of it, is a fill. */
const LEAST_FILL = 6;
const FILL_SHARE = 0.15;

/** How much cloth lines of stitches cover as an area, mm2; 0 where they are lines. Linear in their length. */
export function coveredArea(lines: readonly (readonly Point[])[]): number {
  const cells = new Set<number>();
  const cell = (x: number, y: number) =>
    (Math.floor(x / CELL) + 50_000) * 100_000 + Math.floor(y / CELL) + 50_000;
  for (const line of lines) {
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1], line[i]];
      const steps = Math.max(1, Math.ceil(distance(a, b) / (CELL / 2)));
      for (let s = 0; s <= steps; s++) {
        cells.add(cell(a[0] + ((b[0] - a[0]) * s) / steps, a[1] + ((b[1] - a[1]) * s) / steps));
      }
    }
  }
  let inner = 0;
  for (const one of cells) {
    const around = [-1, 0, 1].every((dx) => [-1, 0, 1].every((dy) => cells.has(one + 100_000 * dx + dy)));
    if (around) inner++;
  }
  const area = inner * CELL * CELL;
  return area >= LEAST_FILL && inner >= FILL_SHARE * cells.size ? area : 0;
}
