import Flatbush from 'flatbush';
import { type Area, insideArea, insideRings, pointInside } from '../geometry/area.js';
import { boxOf } from '../geometry/box.js';
import type { Point } from '../geometry/point.js';
import { firstPoint, type Points } from '../geometry/polyline.js';
import type { DrawnLine } from './drawn-line.js';
import { cyclePoints, type Faces, traceFaces } from './faces.js';
import type { Network } from './network.js';

/** The plane cut up by a network: what lies inside which lines. */
export interface Regions {
  readonly faces: readonly Face[];
  /** to the right hand of each half-edge: index of a face, or OUTSIDE */
  readonly right: Int32Array;
  /** half-edges round the outside of each connected part that lies in no face */
  readonly outsides: readonly (readonly number[])[];
}

export interface Face {
  /** closed, clockwise as drawn */
  readonly boundary: Points;
  readonly holes: readonly Points[];
  /** mm2, without the holes */
  readonly area: number;
  /** color of the topmost filled shape over it */
  readonly fabric: string | null;
}

export const OUTSIDE = -1;

/**
 * Faces of a network, with lines that end inside a face, or only hang between its borders, left out of the borders.
 *
 * @param shapes filled ones give faces their fabric, later ones over earlier ones
 */
export function regionsOf(network: Network, shapes: readonly DrawnLine[]): Regions {
  const whole = traceFaces(network);
  // an edge with the same face on both hands borders nothing: it hangs, or is a bridge
  const borders = network.edges.map((_, e) => whole.cycleOf[2 * e] !== whole.cycleOf[2 * e + 1]);
  const traced = borders.every(Boolean) ? whole : traceFaces(network, borders);
  const rings = traced.cycles.map(({ halfEdges }) => cyclePoints(network, halfEdges));
  const faceOfCycle = new Int32Array(traced.cycles.length).fill(OUTSIDE);
  const faceCycles: number[] = [];
  traced.cycles.forEach(({ area }, c) => {
    if (area > 0) faceOfCycle[c] = faceCycles.push(c) - 1;
  });

  const around = containers(faceCycles.map((c) => ({ ring: rings[c], area: traced.cycles[c].area })));
  const holes: number[][] = faceCycles.map(() => []);
  const outsides: (readonly number[])[] = [];
  const regionOfCycle = traced.cycles.map(({ area, part }, c) => {
    if (area > 0) return faceOfCycle[c];
    const face = around(firstPoint(rings[c]), (f) => traced.cycles[faceCycles[f]].part !== part);
    if (face === OUTSIDE) outsides.push(traced.cycles[c].halfEdges);
    else holes[face].push(c);
    return face;
  });

  const fabricAt = fabrics(shapes);
  const faces = faceCycles.map((c, f): Face => {
    const inner = holes[f].map((h) => rings[h]);
    const inside = pointInside([rings[c], ...inner]);
    return {
      boundary: rings[c],
      holes: inner,
      area: traced.cycles[c].area + holes[f].reduce((sum, h) => sum + traced.cycles[h].area, 0),
      fabric: inside && fabricAt(inside),
    };
  });
  return { faces, right: regionOfHalfEdges(network, whole, traced, regionOfCycle, around), outsides };
}

function regionOfHalfEdges(
  network: Network,
  whole: Faces,
  traced: Faces,
  regionOfCycle: readonly number[],
  around: (p: Point, candidate: (face: number) => boolean) => number,
): Int32Array {
  const right = new Int32Array(2 * network.edges.length).fill(OUTSIDE);
  for (const { halfEdges } of whole.cycles) {
    // a hanging line lies where the borders it hangs on have their face
    const bordering = halfEdges.filter((h) => traced.cycleOf[h] >= 0).map((h) => traced.cycleOf[h]);
    const inner = bordering.find((c) => traced.cycles[c].area > 0) ?? bordering[0];
    const region =
      inner === undefined
        ? around(firstPoint(network.edges[halfEdges[0] >> 1].points), () => true)
        : regionOfCycle[inner];
    for (const h of halfEdges) right[h] = region;
  }
  return right;
}

/** Finds the smallest face round a point among those that may be asked. */
function containers(faces: readonly { readonly ring: Points; readonly area: number }[]) {
  if (!faces.length) return () => OUTSIDE;
  const index = boxIndex(faces.map(({ ring }) => [ring]));
  return (p: Point, candidate: (face: number) => boolean): number => {
    let best = OUTSIDE;
    for (const f of index.search(p[0], p[1], p[0], p[1]).sort((a, b) => a - b)) {
      if (!candidate(f) || (best !== OUTSIDE && faces[f].area >= faces[best].area)) continue;
      if (insideRings(p, [faces[f].ring])) best = f;
    }
    return best;
  };
}

function fabrics(shapes: readonly DrawnLine[]): (p: Point) => string | null {
  const filled = shapes.filter(({ fill }) => fill !== null);
  if (!filled.length) return () => null;
  const areas = filled.map(({ points, area }): Area => area ?? { rings: [points], rule: 'evenodd' });
  const index = boxIndex(areas.map(({ rings }) => rings));
  return (p) => {
    const over = index.search(p[0], p[1], p[0], p[1]).sort((a, b) => b - a);
    const top = over.find((i) => insideArea(p, areas[i]));
    return top === undefined ? null : filled[top].fill;
  };
}

function boxIndex(areas: readonly (readonly Points[])[]): Flatbush {
  const index = new Flatbush(areas.length);
  for (const rings of areas) {
    const { left, top, right, bottom } = boxOf(rings);
    index.add(left, top, right, bottom);
  }
  index.finish();
  return index;
}
