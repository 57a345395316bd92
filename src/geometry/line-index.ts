import Flatbush from 'flatbush';
import type { Box } from './box.js';

/** Segments that lie behind one another share a box: few enough to look through, enough to keep the index small. */
const GROUP = 8;

const NOWHERE: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };

/** Many polylines, asked how far away they are. */
export interface LineIndex {
  /** in which all of them lie; turned inside out where there is none */
  readonly box: Box;
  /** least distance from a point to any line, or Infinity when none is within `within`; mm */
  distance(x: number, y: number, within: number): number;
  /** the same, quick where lines are much nearer than `within`: it looks at most twice as far as they are, and a sixteenth of it first */
  nearest(x: number, y: number, within: number): number;
}

/**
 * An index over polylines given as flat coordinates and starts: line i is points start[i] to start[i + 1]. Building
 * costs n log n in the number of points, a question its logarithm.
 */
export function lineIndex(
  lines: readonly { readonly xy: Float64Array; readonly start: Int32Array }[],
): LineIndex {
  const first: number[] = [];
  const last: number[] = [];
  const from: number[] = [];
  lines.forEach(({ start }, l) => {
    for (let run = 0; run + 1 < start.length; run++) {
      for (let i = start[run]; i + 1 < start[run + 1]; i += GROUP) {
        first.push(i);
        last.push(Math.min(i + GROUP, start[run + 1] - 1));
        from.push(l);
      }
    }
  });
  if (first.length === 0) return { box: NOWHERE, distance: () => Infinity, nearest: () => Infinity };
  const index = new Flatbush(first.length);
  for (let g = 0; g < first.length; g++) {
    const { xy } = lines[from[g]];
    let minX = Infinity;
    let minY = Infinity;
    let maxX = -Infinity;
    let maxY = -Infinity;
    for (let i = first[g]; i <= last[g]; i++) {
      const x = xy[2 * i];
      const y = xy[2 * i + 1];
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  const toGroup = (g: number, x: number, y: number): number => {
    const { xy } = lines[from[g]];
    let least = Infinity;
    for (let i = first[g]; i < last[g]; i++) {
      const x0 = xy[2 * i];
      const y0 = xy[2 * i + 1];
      const dx = xy[2 * i + 2] - x0;
      const dy = xy[2 * i + 3] - y0;
      const square = dx * dx + dy * dy;
      let t = square > 0 ? ((x - x0) * dx + (y - y0) * dy) / square : 0;
      if (t < 0) t = 0;
      else if (t > 1) t = 1;
      const ax = x0 + t * dx - x;
      const ay = y0 + t * dy - y;
      const far = ax * ax + ay * ay;
      if (far < least) least = far;
    }
    return least;
  };
  const { minX, minY, maxX, maxY } = index;
  const distance = (x: number, y: number, within: number): number => {
    // most that is asked about lies apart from all of it
    if (x < minX - within || x > maxX + within || y < minY - within || y > maxY + within) return Infinity;
    let least = Infinity;
    // Every candidate is looked at as it is found, so that no list of them is made.
    index.search(x - within, y - within, x + within, y + within, (g) => {
      least = Math.min(least, toGroup(g, x, y));
      return false;
    });
    return least <= within * within ? Math.sqrt(least) : Infinity;
  };
  return {
    box: { left: minX, top: minY, right: maxX, bottom: maxY },
    distance,
    nearest(x, y, within) {
      // close by there is little to look through
      for (let around = within / 16; around > 0 && around < within; around *= 2) {
        const near = distance(x, y, around);
        if (near < Infinity) return near;
      }
      return distance(x, y, within);
    },
  };
}
