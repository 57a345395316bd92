import { Bezier } from 'bezier-js';
import type { Curve } from './arc-length.js';
import type { Point } from './point.js';

/** A quadratic or cubic Bezier curve by its control points. Its parameter runs from 0 to 1. */
export function bezierCurve(control: readonly Point[]): Curve {
  const n = control.length - 1;
  // Differences of the control points are the control points of the derivative (hodograph).
  const speed = Array.from(
    { length: n },
    (_, i): Point => [n * (control[i + 1][0] - control[i][0]), n * (control[i + 1][1] - control[i][1])],
  );
  return { from: 0, to: 1, at: (t) => casteljau(control, t), velocity: (t) => casteljau(speed, t) };
}

/**
 * Where the curve is extreme in x or y, or bends over: parameters strictly inside, ascending. A flattened curve gets a
 * vertex at each, so that no coarse look can miss a turn back.
 */
export function bezierBreaks(control: readonly Point[]): number[] {
  const curve = new Bezier(control.map(([x, y]) => ({ x, y })));
  const bends = control.length === 4 ? curve.inflections() : [];
  const all = [...curve.extrema().values, ...bends].filter((t) => t > 1e-9 && t < 1 - 1e-9);
  return [...new Set(all)].sort((a, b) => a - b);
}

/** de Casteljau's repeated linear interpolation: exact at both ends, stable between. */
function casteljau(control: readonly Point[], t: number): Point {
  const s = 1 - t;
  switch (control.length) {
    case 1:
      return control[0];
    case 2:
      return [s * control[0][0] + t * control[1][0], s * control[0][1] + t * control[1][1]];
    default: {
      const [ax, ay] = casteljau(control.slice(0, -1), t);
      const [bx, by] = casteljau(control.slice(1), t);
      return [s * ax + t * bx, s * ay + t * by];
    }
  }
}
