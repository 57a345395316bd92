import { convexHull } from '../geometry/convex-hull.js';
import { type Circle, enclosingCircle } from '../geometry/enclosing-circle.js';
import { type LongWay, longWay } from '../geometry/long-way.js';
import type { Points } from '../geometry/polyline.js';
import type { Unit } from '../stitches/stitch.js';
import type { Spot } from './place-ornament.js';

/** What a free-standing figure covers, in its own frame: u to the right, v up. */
export interface Extent {
  /** convex, closed */
  readonly hull: Points;
  /** smallest circle round it */
  readonly circle: Circle;
}

/** Passes of thread lie side by side this far apart, and needle points that would share a hole scatter as far, mm. */
const BESIDE = 0.25;
/** A round thing is looked at in this many directions. */
const DIRECTIONS = 16;

/** How far a figure's needle points reach when its legs get this many passes. */
export function extentOf({ nodes, legs }: Unit, passes: number): Extent {
  const spread = (BESIDE * (passes + 1)) / 2;
  const points: number[] = [];
  const take = (line: Points, around: number) => {
    // points beside the sides of the polygon count too
    const reach = around / Math.cos(Math.PI / DIRECTIONS);
    for (let i = 0; i < line.length; i += 2) {
      for (let k = 0; k < DIRECTIONS; k++) {
        const angle = (2 * Math.PI * k) / DIRECTIONS;
        points.push(line[i] + reach * Math.cos(angle), line[i + 1] + reach * Math.sin(angle));
      }
    }
  };
  take(nodes, spread);
  for (const { path, size } of legs) take(path, spread + size / 2);
  const hull = convexHull(Float64Array.from(points));
  return { hull, circle: enclosingCircle(hull) };
}

/** A line of the figure's frame as it lies on the cloth. */
export function onCloth(line: Points, { x, y, theta }: Spot): Points {
  const [sin, cos] = [Math.sin(theta), Math.cos(theta)];
  const laid = new Float64Array(line.length);
  for (let i = 0; i < line.length; i += 2) {
    const [u, v] = [line[i], line[i + 1]];
    laid[i] = x + u * cos + v * sin;
    laid[i + 1] = y + u * sin - v * cos;
  }
  return laid;
}

/** Where a figure stands whose circle has its middle at a place. */
export function centeredAt({ circle }: Extent, x: number, y: number, theta: number): Spot {
  const [dx, dy] = onCloth(Float64Array.of(circle.x, circle.y), { x: 0, y: 0, theta });
  return { x: x - dx, y: y - dy, theta };
}

/** Figures and patches that are longer than wide by less than this have no longer way. */
const LONGER = 1.15;

/** The theta, next to upright, at which the longer way of a figure lies along that of the cloth; 0 where either has none. */
export function alongCloth({ hull }: Extent, cloth: LongWay): number {
  const own = longWay([onCloth(hull, { x: 0, y: 0, theta: 0 })]);
  if (own.times < LONGER || cloth.times < LONGER) return 0;
  const turn = cloth.direction - own.direction;
  return turn - Math.PI * Math.round(turn / Math.PI);
}
