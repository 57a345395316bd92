import type { SeamMap } from '../block/seam-map.js';
import { float64s, int32s } from '../geometry/flat.js';
import { frameFinder } from '../geometry/guide-frame.js';
import { toSeam, type Walk } from './walk.js';

/** Places along a walked line, even steps apart, with the patches to both hands; -1 where no patch is known. */
export interface LinePlaces {
  readonly u: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** unit normal to the left */
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly leftPatch: Int32Array;
  readonly rightPatch: Int32Array;
  /** from each place to the next, mm */
  readonly step: number;
}

/** Steps are this share of the widest reach, but no finer than LEAST_STEP, mm: a disc is missed by step^2 / 8 d. */
const STEP_SHARE = 0.2;
const LEAST_STEP = 0.5;

export function placesAlong(map: SeamMap, walk: Walk, widest: number): LinePlaces {
  const { guide } = walk;
  const steps = Math.max(1, Math.ceil(guide.length / Math.max(LEAST_STEP, STEP_SHARE * widest)));
  const n = steps + 1;
  const places = {
    u: float64s(n),
    x: float64s(n),
    y: float64s(n),
    nx: float64s(n),
    ny: float64s(n),
    leftPatch: int32s(n).fill(-1),
    rightPatch: int32s(n).fill(-1),
    step: guide.length / steps,
  };
  const finder = frameFinder(guide, 0, guide.u.length - 1);
  const sides = walk.seam === 'outline' ? [] : map.seams[walk.seam - 1].sides;
  let s = 0;
  for (let i = 0; i < n; i++) {
    const u = (guide.length * i) / steps;
    finder.at(u);
    places.u[i] = u;
    places.x[i] = finder.frame[0];
    places.y[i] = finder.frame[1];
    places.nx[i] = Math.sin(finder.frame[2]);
    places.ny[i] = -Math.cos(finder.frame[2]);
    if (sides.length === 0) continue;
    const along = toSeam(walk, u);
    while (s > 0 && sides[s].from > along) s--;
    while (s + 1 < sides.length && sides[s].to < along) s++;
    const { left, right } = sides[s];
    places.leftPatch[i] = (walk.reverse ? right : left) ?? -1;
    places.rightPatch[i] = (walk.reverse ? left : right) ?? -1;
  }
  return places;
}
