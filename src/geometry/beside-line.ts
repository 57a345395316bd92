import type { Point } from './point.js';
import { fromPoints, type Points, pointAt, pointCount } from './polyline.js';

/** Longest miter at a sharp corner, in distances aside. */
const MOST_MITER = 2;

interface Aside {
  readonly at: Point;
  /** along the line, mm */
  readonly u: number;
  /** so far before and after a bend the line beside it is already past it, mm; 0 but inside of bends */
  readonly swallows: number;
}

/**
 * The line beside a polyline, `aside` mm to its left as drawn (y down), to its right where that is negative. Inside of a bend it
 * is cut short to where both its sides meet. Linear in the points.
 */
export function besideLine(line: Points, aside: number): Points {
  const kept: Aside[] = [];
  let u = 0;
  for (let i = 0; i < pointCount(line); i++) {
    if (i > 0) u += lengthOf(line, i - 1);
    const here = { ...moved(line, i, aside), u };
    while (kept.length > 0 && isSwallowed(kept[kept.length - 1], here)) kept.pop();
    const before = kept[kept.length - 1];
    if (!before || !isSwallowed(here, before)) kept.push(here);
  }
  return fromPoints(kept.map(({ at }) => at));
}

const isSwallowed = (one: Aside, by: Aside): boolean =>
  Math.abs(by.u - one.u) < by.swallows && one.swallows < by.swallows;

const lengthOf = (line: Points, i: number): number =>
  Math.hypot(line[2 * i + 2] - line[2 * i], line[2 * i + 3] - line[2 * i + 1]);

/** A point of a line moved aside, halfway between the ways across both its segments. */
function moved(line: Points, i: number, aside: number): Omit<Aside, 'u'> {
  const last = pointCount(line) - 1;
  const [x, y] = pointAt(line, i);
  const [ax, ay] = direction(line, Math.max(0, i - 1));
  const [bx, by] = direction(line, Math.min(last - 1, i));
  const [sx, sy] = [ax + bx, ay + by];
  const double = Math.hypot(sx, sy);
  if (double < 1e-9) return { at: [x + aside * ay, y - aside * ax], swallows: 0 };
  // half of the sum of two unit vectors is the cosine of half the turn long
  const cosine = double / 2;
  const far = aside * Math.min(MOST_MITER, 1 / cosine);
  const turn = ax * by - ay * bx;
  const swallows =
    turn * aside < 0 ? Math.abs(aside) * (Math.sqrt(1 - Math.min(1, cosine) ** 2) / cosine) : 0;
  return { at: [x + (far * sy) / double, y - (far * sx) / double], swallows };
}

function direction(line: Points, i: number): Point {
  const long = lengthOf(line, i) || 1;
  return [(line[2 * i + 2] - line[2 * i]) / long, (line[2 * i + 3] - line[2 * i + 1]) / long];
}
