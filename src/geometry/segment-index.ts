import Flatbush from 'flatbush';
import type { Point } from './point.js';
import { type Points, pointCount } from './polyline.js';

/** Which segments to look for; where most are not wanted, leaving them out here saves sorting them. */
export type Wanted = (segment: number) => boolean;

/** All segments of many polylines, found by their surroundings in logarithmic time. */
export interface SegmentIndex {
  /** segment k runs along line[k] from its point from[k] to the next */
  readonly line: Int32Array;
  readonly from: Int32Array;
  /** segments whose boxes meet a box, in rising order */
  near(minX: number, minY: number, maxX: number, maxY: number, wanted?: Wanted): number[];
  /** segments whose boxes come within a distance of the box of the segment from p to q, in rising order */
  nearSegment(p: Point, q: Point, by: number, wanted?: Wanted): number[];
}

export function indexSegments(lines: readonly Points[]): SegmentIndex {
  let count = 0;
  for (const points of lines) count += Math.max(0, pointCount(points) - 1);
  const line = new Int32Array(count);
  const from = new Int32Array(count);
  if (count === 0) return { line, from, near: () => [], nearSegment: () => [] };
  const index = new Flatbush(count);
  let k = 0;
  lines.forEach((points, l) => {
    for (let i = 0; i + 1 < pointCount(points); i++, k++) {
      line[k] = l;
      from[k] = i;
      const x0 = points[2 * i];
      const y0 = points[2 * i + 1];
      const x1 = points[2 * i + 2];
      const y1 = points[2 * i + 3];
      index.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
    }
  });
  index.finish();
  const near: SegmentIndex['near'] = (minX, minY, maxX, maxY, wanted) =>
    index.search(minX, minY, maxX, maxY, wanted).sort((a, b) => a - b);
  return {
    line,
    from,
    near,
    nearSegment: (p, q, by, wanted) =>
      near(
        Math.min(p[0], q[0]) - by,
        Math.min(p[1], q[1]) - by,
        Math.max(p[0], q[0]) + by,
        Math.max(p[1], q[1]) + by,
        wanted,
      ),
  };
}
