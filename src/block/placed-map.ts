import { type Box, boxOf } from '../geometry/box.js';
import { isAsItWas, type Placement, placedLine, placedPoint } from '../geometry/placement.js';
import { wrapAngle } from '../geometry/point.js';
import { cumulativeLength } from '../geometry/polyline.js';
import { partOf } from '../geometry/polyline-part.js';
import { ARM_CHORD } from '../geometry/tolerances.js';
import { armDirection } from './arms.js';
import type { Arm, Seam, SeamMap } from './seam-map.js';

/**
 * How a block lies when it is made larger by a factor and turned: its frame's corner is (0, 0) again. Turned askew, the
 * frame is the box round its lines; the empty margins of a page do not turn with it.
 *
 * @param turn degrees counterclockwise as seen
 */
export function placementOf(map: SeamMap, scale: number, turn: number): Placement {
  const { left, top } = frameOf(map, scale, turn);
  return { scale, turn, shift: [0 - left, 0 - top] };
}

/** The size of the frame of a block so placed, mm. */
export function placedSize(map: SeamMap, scale: number, turn: number): { width: number; height: number } {
  if (isAsItWas({ scale, turn })) return { width: map.width, height: map.height };
  const { left, top, right, bottom } = frameOf(map, scale, turn);
  return { width: right - left, height: bottom - top };
}

function frameOf(map: SeamMap, scale: number, turn: number): Box {
  const about: Placement = { scale, turn, shift: [0, 0] };
  const lines =
    turn % 90 === 0
      ? [Float64Array.of(0, 0, map.width, map.height)]
      : [...map.seams.map(({ points }) => points), ...(map.outline ? [map.outline.points] : [])];
  return boxOf(lines.map((line) => placedLine(line, about)));
}

/**
 * The map so placed. Numbers, directions and hands are carried along, so that seam 4 is still seam 4 and still begins
 * where it began.
 */
export function placedMap(map: SeamMap, placement: Placement): SeamMap {
  const { scale, turn } = placement;
  if (isAsItWas(placement)) return map;
  const larger = <T extends { readonly u: number }>(one: T): T => ({ ...one, u: scale * one.u });
  const seams = map.seams.map(
    (seam): Seam => ({
      ...seam,
      points: placedLine(seam.points, placement),
      corners: seam.corners.map(larger),
      crossings: seam.crossings.map(larger),
      sides: seam.sides.map((side) => ({ ...side, from: scale * side.from, to: scale * side.to })),
    }),
  );
  const outline = map.outline && {
    points: placedLine(map.outline.points, placement),
    corners: map.outline.corners.map(larger),
  };
  const directed = directions({ seams, outline });
  const arm = (one: Arm): Arm =>
    // a turn alone keeps the chord that an arm's direction is measured on
    scale === 1
      ? { ...one, direction: wrapAngle(one.direction - (turn * Math.PI) / 180) }
      : directed(larger(one));
  return {
    ...placedSize(map, scale, turn),
    outline,
    seams,
    junctions: map.junctions.map((junction) => ({
      ...junction,
      at: placedPoint(junction.at, placement),
      arms: junction.arms.map(arm).sort((a, b) => a.direction - b.direction),
    })),
    patches: map.patches.map((patch) => ({
      ...patch,
      area: scale * scale * patch.area,
      boundary: placedLine(patch.boundary, placement),
      holes: patch.holes.map((hole) => placedLine(hole, placement)),
    })),
  };
}

/** Measures an arm's direction anew: the chord is as long as ever, on a line that is not. */
function directions({ seams, outline }: Pick<SeamMap, 'seams' | 'outline'>): (arm: Arm) => Arm {
  const lengths = new Map<number | 'outline', Float64Array>();
  return (arm) => {
    const line = arm.seam === 'outline' ? outline!.points : seams[arm.seam - 1].points;
    const isClosed = arm.seam === 'outline' || seams[arm.seam - 1].closed;
    const at = lengths.get(arm.seam) ?? cumulativeLength(line);
    lengths.set(arm.seam, at);
    const length = at[at.length - 1];
    const back = arm.sense < 0;
    // on a ring an arm may begin at the end of the line, which is its start
    const u = isClosed && back && arm.u <= 0 ? length : isClosed && !back && arm.u >= length ? 0 : arm.u;
    const [from, to] = back ? [Math.max(0, u - ARM_CHORD), u] : [u, Math.min(length, u + ARM_CHORD)];
    return { ...arm, direction: armDirection(partOf(line, at, from, to), back) };
  };
}
