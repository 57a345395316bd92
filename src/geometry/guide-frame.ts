import type { GuideLine } from './guide-line.js';

/**
 * Finds position and direction on a part of a guide line, fast for places asked in nearly rising order: it walks from
 * where it last was. Beyond the part's ends the line goes on straight, which is where an arm past a corner or an end
 * is laid. `at` writes x, y, theta into `frame`.
 */
export interface FrameFinder {
  readonly frame: Float64Array;
  at(u: number): void;
  /** whether the line heads one way from one place on it to another */
  isStraight(from: number, to: number): boolean;
}

/** Frames on the samples `first` to `last` (inclusive) of a guide line: a part without corners inside. */
export function frameFinder(guide: GuideLine, first: number, last: number): FrameFinder {
  const { u: us, x: xs, y: ys, theta: thetas } = guide;
  const frame = new Float64Array(3);
  let i = first;
  const straightOn = (k: number, along: number) => {
    frame[0] = xs[k] + along * Math.cos(thetas[k]);
    frame[1] = ys[k] + along * Math.sin(thetas[k]);
    frame[2] = thetas[k];
  };
  return {
    frame,
    isStraight(from: number, to: number): boolean {
      if (from < us[first] || to > us[last]) return false;
      while (us[i] > from) i--;
      while (us[i + 1] < from) i++;
      for (let k = i; us[k] < to; k++) if (thetas[k + 1] !== thetas[i]) return false;
      return true;
    },
    at(u: number): void {
      if (u <= us[first]) straightOn(first, u - us[first]);
      else if (u >= us[last]) straightOn(last, u - us[last]);
      else {
        while (us[i] > u) i--;
        while (us[i + 1] < u) i++;
        const t = (u - us[i]) / (us[i + 1] - us[i]);
        frame[0] = xs[i] + t * (xs[i + 1] - xs[i]);
        frame[1] = ys[i] + t * (ys[i + 1] - ys[i]);
        frame[2] = thetas[i] + t * (thetas[i + 1] - thetas[i]);
      }
    },
  };
}

/** Index of the last sample with u[i] <= u (of two samples at a corner, the later one). */
export function sampleBefore(us: Float64Array, u: number): number {
  let low = 0;
  let high = us.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (us[middle] <= u) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The same line walked the other way: left and right change hands. */
export function reversedGuide(guide: GuideLine): GuideLine {
  const n = guide.u.length;
  const flip = (values: Float64Array, f: (value: number) => number) =>
    Float64Array.from({ length: n }, (_, i) => f(values[n - 1 - i]));
  const keep = (value: number) => value;
  return {
    length: guide.length,
    closed: guide.closed,
    u: flip(guide.u, (u) => guide.length - u),
    x: flip(guide.x, keep),
    y: flip(guide.y, keep),
    theta: flip(guide.theta, (theta) => theta + Math.PI),
    corners: guide.corners
      .map((corner) => ({
        u: guide.closed && corner.u === 0 ? 0 : guide.length - corner.u,
        turn: -corner.turn,
      }))
      .sort((a, b) => a.u - b.u),
  };
}
