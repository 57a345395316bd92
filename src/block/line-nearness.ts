import { lineIndex } from '../geometry/line-index.js';
import type { Point } from '../geometry/point.js';
import { cumulativeLength, type Points } from '../geometry/polyline.js';
import { pointAtLength } from '../geometry/polyline-part.js';

/** Lines are looked at in steps of this, mm. */
const STEP = 1;

/** Places along lines, even steps apart on each, their ends among them. */
export function placesOn(lines: readonly Points[]): Point[] {
  return lines.flatMap((line) => {
    const at = cumulativeLength(line);
    const length = at[at.length - 1];
    const steps = Math.max(1, Math.ceil(length / STEP));
    return Array.from({ length: steps + 1 }, (_, i) => pointAtLength(line, at, (length * i) / steps));
  });
}

/** How far a place is from the nearest of some lines, mm; Infinity beyond `within`. */
export function distanceTo(lines: readonly Points[]): (place: Point, within: number) => number {
  const index = lineIndex(lines.map((xy) => ({ xy, start: Int32Array.of(0, xy.length / 2) })));
  return ([x, y], within) => index.distance(x, y, within);
}
