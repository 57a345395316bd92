import { buildSeamMap } from '../../src/block/build-seam-map.js';
import type { LineDrawing } from '../../src/block/drawn-line.js';
import type { SeamMap } from '../../src/block/seam-map.js';
import { fromPoints, type Points } from '../../src/geometry/polyline.js';

type XY = readonly [number, number];

/** A seam map of plain lines, as if drawn in this order. */
export function mapOfLines(lines: readonly (readonly XY[] | Points)[], width = 200, height = 200): SeamMap {
  const drawing: LineDrawing = {
    width,
    height,
    origin: [0, 0],
    lines: lines.map((line, i) => {
      const points = line instanceof Float64Array ? line : fromPoints(line as XY[]);
      const n = points.length;
      const closed = n > 4 && points[0] === points[n - 2] && points[1] === points[n - 1];
      return { points, closed, fill: null, where: `line ${i + 1}` };
    }),
  };
  return buildSeamMap(drawing).map;
}

/** A straight line 100 mm long through (100, 100), and one that butts into its middle at angle theta, from below. */
export function butting(theta: number, length = 70): SeamMap {
  return mapOfLines([
    [
      [40, 100],
      [160, 100],
    ],
    [
      [100, 100],
      [100 + length * Math.cos(theta), 100 + length * Math.sin(theta)],
    ],
  ]);
}
