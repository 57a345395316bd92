import type { Points } from './polyline.js';

/** How an area lies: the direction of its longer way, radians in (-pi / 2, pi / 2], and how many times its width that is. */
export interface LongWay {
  readonly direction: number;
  /** square root of the ratio of its moments: 1 for squares, circles and regular figures */
  readonly times: number;
}

/**
 * The longer way of what rings hold by the even-odd rule, outer ring first: the axis about which the second moment of its
 * area is least. y is down, so a positive direction leads down to the right.
 */
export function longWay(rings: readonly Points[]): LongWay {
  const [ox, oy] = rings[0];
  let [area, mx, my, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
  rings.forEach((ring, r) => {
    const sum = [0, 0, 0, 0, 0, 0];
    for (let i = 0; i + 3 < ring.length; i += 2) {
      const [x0, y0, x1, y1] = [ring[i] - ox, ring[i + 1] - oy, ring[i + 2] - ox, ring[i + 3] - oy];
      const cross = x0 * y1 - x1 * y0;
      sum[0] += cross / 2;
      sum[1] += ((x0 + x1) * cross) / 6;
      sum[2] += ((y0 + y1) * cross) / 6;
      sum[3] += ((x0 * x0 + x0 * x1 + x1 * x1) * cross) / 12;
      sum[4] += ((x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0) * cross) / 24;
      sum[5] += ((y0 * y0 + y0 * y1 + y1 * y1) * cross) / 12;
    }
    const sign = (sum[0] >= 0 ? 1 : -1) * (r === 0 ? 1 : -1);
    area += sign * sum[0];
    mx += sign * sum[1];
    my += sign * sum[2];
    xx += sign * sum[3];
    xy += sign * sum[4];
    yy += sign * sum[5];
  });
  if (!(area > 0)) return { direction: 0, times: 1 };
  const [a, b, c] = [xx - (mx * mx) / area, xy - (mx * my) / area, yy - (my * my) / area];
  const spread = Math.hypot((a - c) / 2, b);
  const [most, least] = [(a + c) / 2 + spread, (a + c) / 2 - spread];
  return { direction: Math.atan2(2 * b, a - c) / 2, times: Math.sqrt(most / Math.max(least, 1e-12 * most)) };
}
