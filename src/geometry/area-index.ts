import { type Area, insideArea } from './area.js';
import { lineIndex } from './line-index.js';
import type { Points } from './polyline.js';

/** How far a place lies from an area: positive outside, negative inside, mm; no further than `within` either way. */
export type SignedDistance = (x: number, y: number, within: number) => number;

/** An area to be asked for distances many times. Each answer costs the area's points, most of it for inside or out. */
export function areaIndex(area: Area): SignedDistance {
  const { start, xy } = joined(area.rings);
  const border = lineIndex([{ xy, start }]);
  return (x, y, within) => {
    const away = Math.min(within, border.nearest(x, y, within));
    return insideArea([x, y], area) ? -away : away;
  };
}

function joined(rings: readonly Points[]): { readonly xy: Float64Array; readonly start: Int32Array } {
  const start = new Int32Array(rings.length + 1);
  rings.forEach((ring, i) => {
    start[i + 1] = start[i] + ring.length / 2;
  });
  const xy = new Float64Array(2 * start[rings.length]);
  rings.forEach((ring, i) => {
    xy.set(ring, 2 * start[i]);
  });
  return { xy, start };
}
