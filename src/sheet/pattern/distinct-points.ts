import type { Points } from '../../geometry/polyline.js';

/** Needle points nearer than this are one mark, mm: no hand tells them apart, and dots would run together. */
export const ONE_MARK = 0.25;

/**
 * Of points x y x y ... those that are to be marked: in their order, each further than ONE_MARK from those kept before it
 * and from all `beside`. Linear: only a point's own square of the plane and the eight round it are looked at.
 */
export function distinctPoints(points: Points, beside: Points = new Float64Array()): Points {
  const squares = new Map<string, number[]>();
  const square = (value: number) => Math.floor(value / ONE_MARK);
  const put = (x: number, y: number) => {
    const key = `${square(x)},${square(y)}`;
    const known = squares.get(key);
    if (known) known.push(x, y);
    else squares.set(key, [x, y]);
  };
  const isTaken = (x: number, y: number): boolean => {
    for (let i = -1; i <= 1; i++) {
      for (let j = -1; j <= 1; j++) {
        const near = squares.get(`${square(x) + i},${square(y) + j}`) ?? [];
        for (let k = 0; k < near.length; k += 2) {
          if (Math.hypot(near[k] - x, near[k + 1] - y) <= ONE_MARK) return true;
        }
      }
    }
    return false;
  };
  for (let i = 0; i < beside.length; i += 2) put(beside[i], beside[i + 1]);
  const kept: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const [x, y] = [points[i], points[i + 1]];
    if (isTaken(x, y)) continue;
    put(x, y);
    kept.push(x, y);
  }
  return Float64Array.from(kept);
}
