import type { Chain } from '../fit/fit.js';
import { float64s, uint8s } from '../geometry/flat.js';
import type { LegMeasures } from './graph/route.js';

/** How the needle works a leg. */
export const Manner = { Straight: 0, Curve: 1, Satin: 2, Knot: 3 } as const;

export interface Legs extends LegMeasures {
  readonly manner: Uint8Array;
}

/** A path that strays less than this from its chord is sewn as a straight. Same bound as the sagitta of a curve's chords. */
export const NEARLY_STRAIGHT = 0.08;

/** Length, extent and manner of every leg of a chain. */
export function measureLegs(chain: Chain): Legs {
  const n = chain.from.length;
  const length = float64s(n);
  const boxes = float64s(4 * n);
  const manner = uint8s(n);
  const { path, pathStart } = chain;
  for (let leg = 0; leg < n; leg++) {
    const first = 2 * pathStart[leg];
    const end = 2 * pathStart[leg + 1];
    let x0 = path[first];
    let y0 = path[first + 1];
    let x1 = x0;
    let y1 = y0;
    let sum = 0;
    for (let i = first + 2; i < end; i += 2) {
      const x = path[i];
      const y = path[i + 1];
      const dx = x - path[i - 2];
      const dy = y - path[i - 1];
      sum += Math.sqrt(dx * dx + dy * dy);
      if (x < x0) x0 = x;
      else if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      else if (y > y1) y1 = y;
    }
    length[leg] = sum;
    boxes[4 * leg] = x0;
    boxes[4 * leg + 1] = y0;
    boxes[4 * leg + 2] = x1;
    boxes[4 * leg + 3] = y1;
    manner[leg] = mannerOf(chain, leg);
  }
  return { length, boxes, manner };
}

function mannerOf(chain: Chain, leg: number): number {
  switch (chain.kind[leg]) {
    case 'knot':
      return Manner.Knot;
    case 'petal':
    case 'cord':
      return Manner.Satin;
    case 'curve':
    case 'loop':
      return chain.pathStart[leg + 1] - chain.pathStart[leg] > 2 ? Manner.Curve : Manner.Straight;
    default:
      return strays(chain, leg) ? Manner.Curve : Manner.Straight;
  }
}

function strays(chain: Chain, leg: number): boolean {
  const { path, pathStart } = chain;
  const first = 2 * pathStart[leg];
  const last = 2 * pathStart[leg + 1] - 2;
  const dx = path[last] - path[first];
  const dy = path[last + 1] - path[first + 1];
  const bound = NEARLY_STRAIGHT * Math.sqrt(dx * dx + dy * dy);
  for (let i = first + 2; i < last; i += 2) {
    if (Math.abs(dx * (path[i + 1] - path[first + 1]) - dy * (path[i] - path[first])) > bound) return true;
  }
  return false;
}
