import type { Patch } from '../block/seam-map.js';
import { type Area, pointInside } from '../geometry/area.js';
import { areaIndex } from '../geometry/area-index.js';
import { boxOf } from '../geometry/box.js';
import type { Circle } from '../geometry/enclosing-circle.js';
import { lineIndex } from '../geometry/line-index.js';
import type { Points } from '../geometry/polyline.js';

/** How far a place is from what must stay clear, mm: negative inside of it, `most` where it is further than that. */
export type Clearance = (x: number, y: number, most: number) => number;

/** Thread that lies on the cloth: polylines as flat coordinates and starts, such as runs of needle points. */
export interface Lines {
  readonly xy: Float64Array;
  readonly start: Int32Array;
}

/** Clear by `margin` of every line. */
export function clearOfLines(lines: readonly Lines[], margin: number): Clearance {
  const index = lineIndex(lines);
  return (x, y, most) => Math.min(most, index.nearest(x, y, most + margin) - margin);
}

/** Clear by `margin` of an area. */
export function clearOfArea(area: Area, margin: number): Clearance {
  const away = areaIndex(area);
  return (x, y, most) => Math.min(most, away(x, y, most + margin) - margin);
}

export interface CircleOptions {
  /** the circle stays clear of the patch's border by this, mm; 0 when not given */
  readonly margin?: number;
  /** the radius found is less than the largest by this at most, mm */
  readonly precision?: number;
  /** share of the radius given up to lie nearer to the middle of the patch: a long patch has room all along */
  readonly forMiddle?: number;
}

/** Fine enough for a figure of thread; finer looks at many more places and shows nowhere. */
const PRECISION = 0.05;

/**
 * The largest circle inside a patch that is clear of what lies on it, or null where there is no room at all. Squares are
 * divided as long as a place in them may beat the best one found: distances change by no more than the way between two
 * places, so a square of half side h around a place with clearance c holds none above c + h sqrt 2.
 *
 * Cost: a few hundred places for most patches, each a question to every obstacle.
 */
export function largestClearCircle(
  { boundary, holes }: Pick<Patch, 'boundary' | 'holes'>,
  obstacles: readonly Clearance[],
  { margin = 0, precision = PRECISION, forMiddle = 0 }: CircleOptions = {},
): Circle | null {
  const rings = [boundary, ...holes];
  const { left, top, right, bottom } = boxOf([boundary]);
  const whole = Math.max(right - left, bottom - top);
  if (!(whole > 0)) return null;
  const cloth = areaIndex({ rings, rule: 'evenodd' });
  const clearance = (x: number, y: number): number => {
    let clear = -cloth(x, y, whole) - margin;
    for (const obstacle of obstacles) clear = Math.min(clear, obstacle(x, y, Math.max(clear, 0)));
    return clear;
  };
  // Half of what may be given up goes to looking less closely, half to the middle.
  const slack = forMiddle / 2;
  const found = search([(left + right) / 2, (top + bottom) / 2], whole / 2, clearance, (best) =>
    Math.max(precision, slack * best),
  );
  const largest = found.reduce((most, { radius }) => Math.max(most, radius), 0);
  const enough = largest * (1 - slack);
  const [mx, my] = middleOf(rings, boundary);
  const away = ({ x, y }: Circle) => Math.hypot(x - mx, y - my);
  let best: Circle | null = null;
  for (const { x, y, radius } of found) {
    const circle = { x, y, radius };
    if (radius <= 0 || radius < enough) continue;
    if (!best || away(circle) < away(best) - 1e-9) best = circle;
  }
  return best;
}

interface Square extends Circle {
  readonly half: number;
}

/** All places looked at: squares level by level, so that the order in which they are found is plain. */
function search(
  [x, y]: readonly [number, number],
  half: number,
  clearance: (x: number, y: number) => number,
  closely: (best: number) => number,
): Square[] {
  const looked: Square[] = [];
  let best = 0;
  const look = (atX: number, atY: number, side: number): Square => {
    const square = { x: atX, y: atY, half: side, radius: clearance(atX, atY) };
    best = Math.max(best, square.radius);
    looked.push(square);
    return square;
  };
  let level = [look(x, y, half)];
  while (level.length > 0) {
    const next: Square[] = [];
    for (const square of level) {
      // asked when its turn comes: the best may have risen since it was looked at
      if (square.radius + square.half * Math.SQRT2 <= best + closely(best)) continue;
      const side = square.half / 2;
      for (const dy of [-side, side]) {
        for (const dx of [-side, side]) next.push(look(square.x + dx, square.y + dy, side));
      }
    }
    level = next;
  }
  return looked;
}

/** Center of area of the cloth; where that lies outside, a place inside. */
function middleOf(rings: readonly Points[], boundary: Points): readonly [number, number] {
  let [area, x, y] = [0, 0, 0];
  const [ox, oy] = boundary;
  rings.forEach((ring, r) => {
    let [own, sumX, sumY] = [0, 0, 0];
    for (let i = 0; i + 3 < ring.length; i += 2) {
      const [x0, y0] = [ring[i] - ox, ring[i + 1] - oy];
      const [x1, y1] = [ring[i + 2] - ox, ring[i + 3] - oy];
      const cross = x0 * y1 - x1 * y0;
      own += cross;
      sumX += (x0 + x1) * cross;
      sumY += (y0 + y1) * cross;
    }
    // whichever way they run, holes take away
    const sign = (own >= 0 ? 1 : -1) * (r === 0 ? 1 : -1);
    area += sign * own;
    x += sign * sumX;
    y += sign * sumY;
  });
  if (Math.abs(area) < 1e-9) return pointInside(rings) ?? [ox, oy];
  return [ox + x / (3 * area), oy + y / (3 * area)];
}
