import type { Arm, SeamMap } from '../../src/block/seam-map.js';
import { wrapAngle } from '../../src/geometry/point.js';
import { type Points, polylineLength, reversed } from '../../src/geometry/polyline.js';

/** A map as its mirror shows it, left for right; seams run as they ran, the outline still clockwise. */
export function mirroredMap(map: SeamMap): SeamMap {
  const flip = (line: Points): Points => line.map((value, i) => (i % 2 ? value : map.width - value));
  const around = map.outline ? polylineLength(map.outline.points) : 0;
  const backward = (u: number): number => (u === 0 ? 0 : around - u);
  const arm = (one: Arm): Arm => ({
    ...one,
    direction: wrapAngle(Math.PI - one.direction),
    ...(one.seam === 'outline' && { u: backward(one.u), sense: one.sense === 1 ? -1 : 1 }),
  });
  return {
    ...map,
    outline: map.outline && {
      points: reversed(flip(map.outline.points)),
      corners: map.outline.corners.map(({ u, turn }) => ({ u: backward(u), turn })).sort((a, b) => a.u - b.u),
    },
    seams: map.seams.map((seam) => ({
      ...seam,
      points: flip(seam.points),
      corners: seam.corners.map(({ u, turn }) => ({ u, turn: -turn })),
      sides: seam.sides.map(({ from, to, left, right }) => ({ from, to, left: right, right: left })),
    })),
    junctions: map.junctions.map((junction) => ({
      ...junction,
      at: [map.width - junction.at[0], junction.at[1]],
      arms: junction.arms.map(arm).sort((a, b) => a.direction - b.direction),
    })),
    patches: map.patches.map((patch) => ({
      ...patch,
      boundary: reversed(flip(patch.boundary)),
      holes: patch.holes.map((hole) => reversed(flip(hole))),
    })),
  };
}
