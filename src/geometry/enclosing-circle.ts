import { convexHull } from './convex-hull.js';
import type { Points } from './polyline.js';

/** Middle and radius, mm. */
export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Points this share of the radius outside lie on the circle: rounding. */
const ROUNDING = 1e-12;

/**
 * The smallest circle round points, of which there is at least one: grown point by point, each time through the point
 * that was left out (Welzl 1991, Smallest enclosing disks, as three nested loops; from memory). Only the hull is looked at.
 */
export function enclosingCircle(points: Points): Circle {
  const hull = convexHull(points);
  const n = Math.max(1, hull.length / 2 - 1);
  const at = (i: number) => [hull[2 * i], hull[2 * i + 1]] as const;
  let circle: Circle = { x: hull[0], y: hull[1], radius: 0 };
  const holds = (i: number) =>
    Math.hypot(hull[2 * i] - circle.x, hull[2 * i + 1] - circle.y) <= circle.radius * (1 + ROUNDING);
  for (let i = 1; i < n; i++) {
    if (holds(i)) continue;
    circle = { x: at(i)[0], y: at(i)[1], radius: 0 };
    for (let j = 0; j < i; j++) {
      if (holds(j)) continue;
      circle = acrossTwo(at(i), at(j));
      for (let k = 0; k < j; k++) {
        if (!holds(k)) circle = throughThree(at(i), at(j), at(k));
      }
    }
  }
  return circle;
}

type XY = readonly [number, number];

function acrossTwo(a: XY, b: XY): Circle {
  const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  return { x, y, radius: Math.hypot(a[0] - b[0], a[1] - b[1]) / 2 };
}

function throughThree([ax, ay]: XY, [bx, by]: XY, [cx, cy]: XY): Circle {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, cx - ax, cy - ay];
  const twice = 2 * (ux * vy - uy * vx);
  const [uu, vv] = [ux * ux + uy * uy, vx * vx + vy * vy];
  const dx = (vy * uu - uy * vv) / twice;
  const dy = (ux * vv - vx * uu) / twice;
  return { x: ax + dx, y: ay + dy, radius: Math.hypot(dx, dy) };
}
