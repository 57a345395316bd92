import type { Box } from './box.js';
import { fromPoints, type Points } from './polyline.js';

/**
 * The parts of a polyline inside a box, its edges included, in order along the line. Each segment is cut by the four edges
 * (Y.-D. Liang and B. A. Barsky, "A new concept and method for line clipping", 1984; from memory). Linear in the points.
 */
export function clipLine(line: Points, box: Box): Points[] {
  const parts: Points[] = [];
  let part: [number, number][] = [];
  const finish = () => {
    if (part.length > 1) parts.push(fromPoints(part));
    part = [];
  };
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [x0, y0, x1, y1] = line.subarray(i, i + 4);
    const [dx, dy] = [x1 - x0, y1 - y0];
    const inside = between(
      box.left - x0,
      box.right - x0,
      dx,
      between(box.top - y0, box.bottom - y0, dy, [0, 1]),
    );
    if (!inside) {
      finish();
      continue;
    }
    const [from, to] = inside;
    if (part.length === 0 || from > 0) {
      finish();
      part.push(from === 0 ? [x0, y0] : [x0 + from * dx, y0 + from * dy]);
    }
    part.push(to === 1 ? [x1, y1] : [x0 + to * dx, y0 + to * dy]);
    if (to < 1) finish();
  }
  finish();
  return parts;
}

type Stretch = readonly [from: number, to: number];

/** Of a stretch of shares of a step by d, the part from `low` to `high`; null when there is none. */
function between(low: number, high: number, d: number, stretch: Stretch | null): Stretch | null {
  if (!stretch) return null;
  if (d === 0) return low <= 0 && high >= 0 ? stretch : null;
  const [enter, leave] = d > 0 ? [low / d, high / d] : [high / d, low / d];
  const [from, to] = [Math.max(stretch[0], enter), Math.min(stretch[1], leave)];
  return from <= to ? [from, to] : null;
}
