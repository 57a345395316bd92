import type { Point } from './point.js';
import type { Points } from './polyline.js';

/** A circle as a closed polyline that holds it, no more than this outside, mm. */
const OUTSIDE = 0.01;

/** A polygon round a circle: its sides touch the circle, so that whatever is clear of it is clear of the circle. */
export function roundDisc([x, y]: Point, radius: number): Points {
  const half = Math.acos(radius / (radius + OUTSIDE));
  const sides = Math.max(8, Math.ceil(Math.PI / half));
  const outer = radius / Math.cos(Math.PI / sides);
  return Float64Array.from(
    Array.from({ length: sides + 1 }, (_, i) => {
      const angle = (2 * Math.PI * (i % sides)) / sides;
      return [x + outer * Math.cos(angle), y + outer * Math.sin(angle)];
    }).flat(),
  );
}
