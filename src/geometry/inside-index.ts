import { type Points, pointCount } from './polyline.js';

/** Sides are looked up by the levels they cross, so many to a side on average. */
const LEVELS_PER_SIDE = 1;

/**
 * Asks many times whether a place lies inside a closed polyline by the even-odd rule. Sides are sorted by the level they
 * lie on: building costs the sides and the levels that each crosses, a question the sides on its own level.
 */
export function insideIndex(ring: Points): (x: number, y: number) => boolean {
  const sides = pointCount(ring) - 1;
  let [top, bottom] = [Infinity, -Infinity];
  for (let i = 0; i <= sides; i++) {
    top = Math.min(top, ring[2 * i + 1]);
    bottom = Math.max(bottom, ring[2 * i + 1]);
  }
  const count = Math.max(1, Math.ceil(sides * LEVELS_PER_SIDE));
  const height = (bottom - top) / count || 1;
  const levelOf = (y: number) => Math.min(count - 1, Math.max(0, Math.floor((y - top) / height)));
  const levels: number[][] = Array.from({ length: count }, () => []);
  for (let i = 0; i < sides; i++) {
    const [y0, y1] = [ring[2 * i + 1], ring[2 * i + 3]];
    for (let l = levelOf(Math.min(y0, y1)); l <= levelOf(Math.max(y0, y1)); l++) levels[l].push(i);
  }
  return (x, y) => {
    if (y < top || y > bottom) return false;
    let inside = false;
    for (const i of levels[levelOf(y)]) {
      const [y0, y1] = [ring[2 * i + 1], ring[2 * i + 3]];
      if (y0 > y === y1 > y) continue;
      const x0 = ring[2 * i];
      if (x < x0 + ((y - y0) / (y1 - y0)) * (ring[2 * i + 2] - x0)) inside = !inside;
    }
    return inside;
  };
}
