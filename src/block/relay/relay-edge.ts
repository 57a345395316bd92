import { distance, type Point } from '../../geometry/point.js';
import { cumulativeLength, fromPoints, polylineLength } from '../../geometry/polyline.js';
import { pointAtLength, segmentAt } from '../../geometry/polyline-part.js';
import type { Moves } from './relay-line.js';

/** A zigzag's direction is measured over this much of its middle line to either side, mm: rounding does not tilt it. */
const HEADING_SPAN = 0.5;

/**
 * A zigzag or satin edge laid again along its middle line: at its own width, and with its own way from stitch to stitch,
 * so that it gets more stitches or fewer.
 */
export function relayEdge(zigzag: readonly Point[], { place }: Moves): Point[] {
  const middle = middleLine(zigzag);
  const widths = zigzag.map((p, i) => distance(p, middle[i]));
  const path = fromPoints(middle.map(place));
  const at = cumulativeLength(path);
  const was = polylineLength(fromPoints(middle));
  const length = at[at.length - 1];
  const count = Math.max(2, Math.round(((zigzag.length - 1) * length) / was));
  const span = Math.max(HEADING_SPAN, (1.5 * length) / count);
  let side: number = sideOf(zigzag, middle);
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const u = (length * i) / count;
    const [x, y] = pointAtLength(path, at, u);
    const a = pointAtLength(path, at, Math.max(0, u - span));
    const b = pointAtLength(path, at, Math.min(length, u + span));
    const size = distance(a, b) || 1;
    const half = side * widthAt(widths, at, u);
    side = -side;
    return [x + (half * (b[1] - a[1])) / size, y - (half * (b[0] - a[0])) / size];
  });
}

/** The middle line, a point to each needle point: halfway between the middles of the stitches before and behind it. */
export function middleLine(zigzag: readonly Point[]): Point[] {
  const middles = zigzag
    .slice(1)
    .map((p, i): Point => [(p[0] + zigzag[i][0]) / 2, (p[1] + zigzag[i][1]) / 2]);
  const last = middles.length - 1;
  const beyond = (a: Point, b: Point): Point => [a[0] + (a[0] - b[0]) / 2, a[1] + (a[1] - b[1]) / 2];
  return [
    beyond(middles[0], middles[1]),
    ...middles.slice(1).map((p, i): Point => [(p[0] + middles[i][0]) / 2, (p[1] + middles[i][1]) / 2]),
    beyond(middles[last], middles[last - 1]),
  ];
}

/** +1 when the zigzag begins to the left of its middle line, else -1. */
function sideOf(zigzag: readonly Point[], middle: readonly Point[]): 1 | -1 {
  let left = 0;
  for (let i = 1; i + 1 < zigzag.length; i++) {
    const dx = middle[i + 1][0] - middle[i - 1][0];
    const dy = middle[i + 1][1] - middle[i - 1][1];
    const across = (zigzag[i][0] - middle[i][0]) * dy - (zigzag[i][1] - middle[i][1]) * dx;
    left += i % 2 ? -Math.sign(across) : Math.sign(across);
  }
  return left >= 0 ? 1 : -1;
}

/** Half the width at the place on the old middle line that has come to lie at u on the new one. */
function widthAt(widths: readonly number[], at: Float64Array, u: number): number {
  const i = segmentAt(at, u);
  const t = at[i + 1] > at[i] ? Math.min(1, (u - at[i]) / (at[i + 1] - at[i])) : 0;
  return widths[i] + t * (widths[i + 1] - widths[i]);
}
