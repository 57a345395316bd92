import type { Chain } from '../../fit/fit.js';
import { SAME_POINT } from '../../geometry/tolerances.js';
import { type Known, numberOf } from './known.js';
import type { Part } from './part.js';

/**
 * For each group of a part, the number (in `known.crossings`) of its list of pairs of legs that cross on the cloth, the later one in
 * this group: e0 f0 e1 f1 ..., places within the group, e before f. Places in the group before count back from -1, its last leg.
 */
export function crossingPairs(chain: Chain, part: Part, boxes: Float64Array, known: Known): Int32Array {
  const { legs, start } = part;
  const numbers = new Int32Array(start.length - 1);
  let before: number[] = [];
  for (let g = 0; g + 1 < start.length; g++) {
    const pairs: number[] = [];
    const earliest = g > 0 ? start[g - 1] : start[g];
    for (let f = start[g]; f < start[g + 1]; f++) {
      for (let e = earliest; e < f; e++) {
        if (apart(boxes, legs[e], legs[f])) continue;
        if (cross(chain, legs[e], legs[f])) pairs.push(e - start[g], f - start[g]);
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
function cross(chain: Chain, a: number, b: number): boolean {
  const { path, pathStart } = chain;
  for (let i = pathStart[a] + 1; i < pathStart[a + 1]; i++) {
    const ax = path[2 * i - 2];
    const ay = path[2 * i - 1];
    const bx = path[2 * i];
    const by = path[2 * i + 1];
    for (let j = pathStart[b] + 1; j < pathStart[b + 1]; j++) {
      const cx = path[2 * j - 2];
      const cy = path[2 * j - 1];
      const dx = path[2 * j];
      const dy = path[2 * j + 1];
      const c = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
      const d = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
      const near = SAME_POINT * (Math.abs(bx - ax) + Math.abs(by - ay));
      if (!(c < -near && d > near) && !(c > near && d < -near)) continue;
      const e = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx);
      const f = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx);
      const close = SAME_POINT * (Math.abs(dx - cx) + Math.abs(dy - cy));
      if ((e < -close && f > close) || (e > close && f < -close)) return true;
    }
  }
  return false;
}
