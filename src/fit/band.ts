import type { GuideLine } from '../geometry/guide-line.js';

/**
 * How far a treatment may reach to each side along a guide line: samples over u, linear between them. `left` and
 * `right` are mm, both positive.
 */
export interface Band {
  readonly u: Float64Array;
  readonly left: Float64Array;
  readonly right: Float64Array;
}

export interface Reach {
  readonly left: number;
  readonly right: number;
}

/** The same reach along the whole line. */
export function evenBand(guide: GuideLine, reach: Reach): Band {
  return {
    u: Float64Array.of(0, guide.length),
    left: Float64Array.of(reach.left, reach.left),
    right: Float64Array.of(reach.right, reach.right),
  };
}

/** Reach at one place. */
export function reachAt(band: Band, u: number): Reach {
  const { u: us } = band;
  let low = 0;
  let high = us.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (us[middle] <= u) low = middle;
    else high = middle;
  }
  const t = Math.min(1, Math.max(0, (u - us[low]) / (us[high] - us[low] || 1)));
  return {
    left: band.left[low] + t * (band.left[high] - band.left[low]),
    right: band.right[low] + t * (band.right[high] - band.right[low]),
  };
}

/** Cloth that a band reaches over from one place of its line to another, mm2. */
export function areaOf(band: Band, from: number, to: number): number {
  const us = [from, ...[...band.u].filter((u) => u > from && u < to), to];
  const width = (u: number) => {
    const { left, right } = reachAt(band, u);
    return left + right;
  };
  return us.slice(1).reduce((sum, u, i) => sum + ((u - us[i]) * (width(u) + width(us[i]))) / 2, 0);
}

/** Reach as seen from the guide line of a row that lies `offset` mm to its left. */
export function shifted(reach: Reach, offset: number): Reach {
  return { left: Math.max(0, reach.left + offset), right: Math.max(0, reach.right - offset) };
}

/** The narrower of two bands of one line, place by place. */
export function narrowerBand(a: Band, b: Band): Band {
  const u = Float64Array.from([...a.u, ...b.u]).sort();
  const left = new Float64Array(u.length);
  const right = new Float64Array(u.length);
  for (let i = 0; i < u.length; i++) {
    const [one, other] = [reachAt(a, u[i]), reachAt(b, u[i])];
    left[i] = Math.min(one.left, other.left);
    right[i] = Math.min(one.right, other.right);
  }
  return { u, left, right };
}
