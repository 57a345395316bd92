import type { UnitLeg } from '../stitches/stitch.js';
import { type Box, boxOf, SAME } from './leg-box.js';

/** Whether legs are their own mirror image along the line, to the eye. */
export const isMirrored = (legs: readonly UnitLeg[]): boolean => mirroredOf(legs).length === legs.length;

/** Those legs that have one over against them, seen from the middle of all. */
export function mirroredOf(legs: readonly UnitLeg[]): readonly UnitLeg[] {
  const { first, last } = boxOf(legs);
  const turned = (uv: Float64Array) => uv.map((value, i) => (i % 2 === 0 ? first + last - value : value));
  const boxes = legs.map((leg) => boxOf([leg]));
  return legs.filter((leg) => {
    const path = turned(leg.path);
    const box = boxOf([{ ...leg, path }]);
    return legs.some((other, i) => isSameBox(box, boxes[i]) && isSameWay(path, other.path));
  });
}

const isNear = (a: number, b: number): boolean => Math.abs(a - b) < SAME;

const isSameBox = (a: Box, b: Box): boolean =>
  isNear(a.first, b.first) && isNear(a.last, b.last) && isNear(a.least, b.least) && isNear(a.most, b.most);

/** Whether two paths lead between the same places, either way. */
function isSameWay(a: Float64Array, b: Float64Array): boolean {
  const [m, n] = [a.length, b.length];
  const meet = (i: number, k: number) => isNear(a[i], b[k]) && isNear(a[i + 1], b[k + 1]);
  return (meet(0, 0) && meet(m - 2, n - 2)) || (meet(0, n - 2) && meet(m - 2, 0));
}
