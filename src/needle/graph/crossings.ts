import type { Chain } from '../../fit/fit.js';
import { int32s } from '../../geometry/flat.js';
import { SAME_POINT } from '../../geometry/tolerances.js';
import { type Known, numberOf } from './known.js';
import type { Part } from './part.js';

/**
 * For each group of a part, the number (in `known.crossings`) of its list of pairs of legs that cross on the cloth, the later one in
 * this group: e0 f0 e1 f1 ..., places within the group, e before f. What the hand works behind the cloth belongs on top of nothing. Places in the group before count back from -1, its last leg.
 */
export function crossingPairs(chain: Chain, part: Part, boxes: Float64Array, known: Known): Int32Array {
  const { legs, start } = part;
  const numbers = int32s(start.length - 1);
  let before: number[] = [];
  for (let g = 0; g + 1 < start.length; g++) {
    const pairs: number[] = [];
    const earliest = g > 0 ? start[g - 1] : start[g];
    for (let f = start[g]; f < start[g + 1]; f++) {
      if (chain.kind[legs[f]] === 'under') continue;
      for (let e = earliest; e < f; e++) {
        if (apart(boxes, legs[e], legs[f])) continue;
        if (cross(chain, legs[e], legs[f], boxes)) pairs.push(e - start[g], f - start[g]);
      }
    }
    const again = g > 0 && pairs.length === before.length && pairs.every((place, i) => place === before[i]);
    numbers[g] = again
      ? numbers[g - 1]
      : numberOf(Int32Array.from(pairs), pairs.join(), known.crossings, known.crossingNumbers);
    before = pairs;
  }
  return numbers;
}

function apart(boxes: Float64Array, a: number, b: number): boolean {
  const i = 4 * a;
  const j = 4 * b;
  return (
    boxes[i] >= boxes[j + 2] ||
    boxes[j] >= boxes[i + 2] ||
    boxes[i + 1] >= boxes[j + 3] ||
    boxes[j + 1] >= boxes[i + 3]
  );
}

/** Whether two paths cross properly; touching, as at a shared needle point, is no crossing. */
function cross({ path, pathStart }: Chain, a: number, b: number, boxes: Float64Array): boolean {
  const a0 = 2 * pathStart[a];
  const a1 = 2 * pathStart[a + 1];
  const b0 = 2 * pathStart[b];
  const b1 = 2 * pathStart[b + 1];
  if (partedByChord(path, a0, a1, b0, b1) || partedByChord(path, b0, b1, a0, a1)) return false;
  const left = boxes[4 * b];
  const top = boxes[4 * b + 1];
  const right = boxes[4 * b + 2];
  const bottom = boxes[4 * b + 3];
  for (let i = a0 + 2; i < a1; i += 2) {
    const ax = path[i - 2];
    const ay = path[i - 1];
    if (ax < path[i] ? ax > right || path[i] < left : path[i] > right || ax < left) continue;
    if (ay < path[i + 1] ? ay > bottom || path[i + 1] < top : path[i + 1] > bottom || ay < top) continue;
    const ux = path[i] - ax;
    const uy = path[i + 1] - ay;
    const near = SAME_POINT * (Math.abs(ux) + Math.abs(uy));
    let c = ux * (path[b0 + 1] - ay) - uy * (path[b0] - ax);
    for (let j = b0 + 2; j < b1; j += 2) {
      const d = ux * (path[j + 1] - ay) - uy * (path[j] - ax);
      const sides = (c < -near && d > near) || (c > near && d < -near);
      c = d;
      if (!sides) continue;
      const cx = path[j - 2];
      const cy = path[j - 1];
      const vx = path[j] - cx;
      const vy = path[j + 1] - cy;
      const e = vx * (ay - cy) - vy * (ax - cx);
      const f = vx * (path[i + 1] - cy) - vy * (path[i] - cx);
      const close = SAME_POINT * (Math.abs(vx) + Math.abs(vy));
      if ((e < -close && f > close) || (e > close && f < -close)) return true;
    }
  }
  return false;
}

/** Whether a line along the chord of path a has all of a on one side and all of b on the other: most legs that meet do. */
function partedByChord(path: Float64Array, a0: number, a1: number, b0: number, b1: number): boolean {
  const x = path[a0];
  const y = path[a0 + 1];
  const dx = path[a1 - 2] - x;
  const dy = path[a1 - 1] - y;
  const bulk = Math.abs(dx) + Math.abs(dy);
  // a knot, or a path that ends where it begins, has no chord
  if (bulk < SAME_POINT) return false;
  const slack = PARTED * bulk;
  let low = 0;
  let high = 0;
  for (let i = a0 + 2; i < a1 - 2; i += 2) {
    const side = dx * (path[i + 1] - y) - dy * (path[i] - x);
    if (side < low) low = side;
    else if (side > high) high = side;
  }
  low += slack;
  high -= slack;
  let above = true;
  let below = true;
  for (let i = b0; i < b1; i += 2) {
    const side = dx * (path[i + 1] - y) - dy * (path[i] - x);
    if (side < high) above = false;
    if (side > low) below = false;
    if (!above && !below) return false;
  }
  return true;
}

/** Noise of arithmetic at a shared point, mm; far below SAME_POINT, so that no true crossing hides in it. */
const PARTED = 1e-9;
