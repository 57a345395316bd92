import type { Curve } from './arc-length.js';
import type { Point } from './point.js';

/** Part of an ellipse, also of a slanted one: center + cos(t) a + sin(t) b, with a and b conjugate half-diameters. */
export interface EllipseArc {
  readonly center: Point;
  readonly a: Point;
  readonly b: Point;
  readonly from: number;
  /** may be less than `from`: the arc then runs the other way */
  readonly to: number;
}

/** The arc with a rising parameter from 0 to the angle it spans. */
export function ellipseCurve({ center, a, b, from, to }: EllipseArc): Curve {
  const way = to < from ? -1 : 1;
  return {
    from: 0,
    to: Math.abs(to - from),
    at: (t) => {
      const c = Math.cos(from + way * t);
      const s = Math.sin(from + way * t);
      return [center[0] + c * a[0] + s * b[0], center[1] + c * a[1] + s * b[1]];
    },
    velocity: (t) => {
      const c = Math.cos(from + way * t);
      const s = Math.sin(from + way * t);
      return [way * (c * b[0] - s * a[0]), way * (c * b[1] - s * a[1])];
    },
  };
}

/** Parameters of `ellipseCurve` where the arc is extreme in x or y, ascending. */
export function ellipseBreaks({ a, b, from, to }: EllipseArc): number[] {
  const way = to < from ? -1 : 1;
  const span = Math.abs(to - from);
  const found: number[] = [];
  for (const k of [0, 1]) {
    const extreme = Math.atan2(b[k], a[k]);
    // extremes lie half a turn apart; the first one at or after the start, then on
    let t = way * (extreme - from);
    t -= Math.floor(t / Math.PI) * Math.PI;
    for (; t < span - 1e-9; t += Math.PI) if (t > 1e-9) found.push(t);
  }
  return found.sort((p, q) => p - q);
}

/** A cubic stands for at most this much of an arc, radians: it then strays less than 1e-7 of the radius. */
const CUBIC_SPAN = Math.PI / 8;

/**
 * The arc as cubics, each by its two control points and its end. A cubic over the angle d with handles of
 * 4/3 tan(d/4) strays by (2/27) sin^6(d/4) / cos^2(d/4) of the radius (Goldapp, Computer Aided Geometric Design 8,
 * 1991; from memory).
 */
export function cubicsOfArc(arc: EllipseArc): [Point, Point, Point][] {
  const curve = ellipseCurve(arc);
  const count = Math.max(1, Math.ceil(curve.to / CUBIC_SPAN - 1e-9));
  const handle = (4 / 3) * Math.tan(curve.to / count / 4);
  const ahead = (t: number, by: number): Point => {
    const [p, v] = [curve.at(t), curve.velocity(t)];
    return [p[0] + by * v[0], p[1] + by * v[1]];
  };
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [(i * curve.to) / count, ((i + 1) * curve.to) / count];
    return [ahead(from, handle), ahead(to, -handle), curve.at(to)];
  });
}

/**
 * An arc by its two ends, as SVG writes it (Scalable Vector Graphics 2, appendix B.2: "Elliptical arc implementation
 * notes"). Radii too small to reach are scaled up. Null when the arc is a straight line or a point.
 *
 * @param slant radians, from the x axis to the first radius
 */
export function arcBetween(
  p: Point,
  q: Point,
  radii: Point,
  slant: number,
  large: boolean,
  sweep: boolean,
): EllipseArc | null {
  let [rx, ry] = [Math.abs(radii[0]), Math.abs(radii[1])];
  if (rx === 0 || ry === 0 || (p[0] === q[0] && p[1] === q[1])) return null;
  const [c, s] = [Math.cos(slant), Math.sin(slant)];
  const [hx, hy] = [(p[0] - q[0]) / 2, (p[1] - q[1]) / 2];
  const [x, y] = [c * hx + s * hy, c * hy - s * hx];
  const reach = (x / rx) ** 2 + (y / ry) ** 2;
  if (reach > 1) {
    rx *= Math.sqrt(reach);
    ry *= Math.sqrt(reach);
  }
  const under = Math.max(0, 1 / Math.min(reach, 1) - 1);
  const root = (large === sweep ? -1 : 1) * Math.sqrt(under);
  const [cx, cy] = [(root * rx * y) / ry, (-root * ry * x) / rx];
  const from = Math.atan2((y - cy) / ry, (x - cx) / rx);
  let to = Math.atan2((-y - cy) / ry, (-x - cx) / rx);
  if (sweep && to < from) to += 2 * Math.PI;
  if (!sweep && to > from) to -= 2 * Math.PI;
  return {
    center: [c * cx - s * cy + (p[0] + q[0]) / 2, s * cx + c * cy + (p[1] + q[1]) / 2],
    a: [c * rx, s * rx],
    b: [-s * ry, c * ry],
    from,
    to,
  };
}
