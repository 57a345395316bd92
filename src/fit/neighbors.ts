import type { SeamMap } from '../block/seam-map.js';
import { wrapAngle } from '../geometry/point.js';
import type { Reach } from './band.js';
import { type Meeting, type Pressed, pressing, type Side, sideOf } from './beside-pair.js';
import { placesAlong } from './line-places.js';
import type { Memory } from './memory.js';
import { type NearSides, nearSides } from './near-sides.js';
import type { Walk } from './walk.js';

/** A line of the block that is dressed, and how far its treatment would reach to both hands of the walk. */
export interface Neighbor {
  readonly walk: Walk;
  readonly reach: Reach;
}

/** How far a treatment may reach beside its neighbors: mm at places along its line, Infinity where none is near. */
export interface Beside {
  readonly u: Float64Array;
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/** Where two lines meet at an angle sharper than this they run side by side: ends would keep them apart for too long. */
const SHARPEST = Math.asin(1 / 3);

/**
 * What every line's neighbors leave it, in the order of the lines; null for a line that none comes near. Where the
 * reaches of two lines across a patch are more than lies between them, each gets half of the clear distance less half a
 * gap, or what the other leaves of it when that is more. Near a junction of both their ends keep them apart, or one lies
 * over the other, and nothing is narrowed. Cost: n log n in the places, one a millimeter or so.
 *
 * @param memory what is known of the same map at the same gap
 */
export function besideNeighbors(
  map: SeamMap,
  lines: readonly Neighbor[],
  gap: number,
  memory: Memory,
): (Beside | null)[] {
  if (lines.length < 2) return lines.map(() => null);
  const sides = lines.map((line, l) =>
    memory.of('side', l, [line.walk, line.reach], () =>
      sideOf(placesAlong(map, line.walk, Math.max(line.reach.left, line.reach.right)), line.reach),
    ),
  );
  const pressed: Pressed[][] = lines.map(() => []);
  const last = memory.of('near sides', 0, [map], (): { near: NearSides | null } => ({ near: null }));
  last.near = nearSides(sides, gap, last.near);
  last.near.later.forEach((others, a) => {
    for (const b of others) {
      const [one, other] = memory.of('pressing', a * sides.length + b, [sides[a], sides[b]], () => {
        const [first, second] = [lines[a], lines[b]];
        const known = memory.of('shared junctions', 0, [map], () => sharedJunctions(map));
        const shared = known.get(pairOf(first.walk.seam, second.walk.seam)) ?? [];
        return pressing(sides[a], sides[b], meetings(map, first, second, shared, gap), gap);
      });
      if (one.place.length) pressed[a].push(one);
      if (other.place.length) pressed[b].push(other);
    }
  });
  return sides.map((side, l) =>
    pressed[l].length === 0
      ? null
      : memory.of('beside', l, [side, ...pressed[l]], () => left(side, pressed[l])),
  );
}

/** The least of what all neighbors leave a line. */
function left(side: Side, pressed: readonly Pressed[]): Beside {
  const beside = {
    u: side.u,
    left: new Float64Array(side.u.length).fill(Infinity),
    right: new Float64Array(side.u.length).fill(Infinity),
  };
  for (const { place, isLeft, leaves } of pressed) {
    for (let p = 0; p < place.length; p++) {
      const hand = isLeft[p] ? beside.left : beside.right;
      hand[place[p]] = Math.min(hand[place[p]], leaves[p]);
    }
  }
  return beside;
}

type Seam = Walk['seam'];
const pairOf = (a: Seam, b: Seam): string => `${a}/${b}`;

/** For each pair of seams that meet, either first, the junctions where they do, and the angle between their arms. */
function sharedJunctions({ junctions }: SeamMap): Map<string, [number, number][]> {
  const found = new Map<string, [number, number][]>();
  junctions.forEach(({ arms }, j) => {
    arms.forEach((arm, i) => {
      for (const other of arms.slice(i + 1)) {
        if (arm.seam === other.seam) continue;
        const angle = Math.min(Math.PI / 2, Math.abs(wrapAngle(other.direction - arm.direction)));
        const known = found.get(pairOf(arm.seam, other.seam)) ?? [];
        known.push([j, angle]);
        found.set(pairOf(arm.seam, other.seam), known).set(pairOf(other.seam, arm.seam), known);
      }
    });
  });
  return found;
}

/**
 * Straight bands that leave a junction at an angle are clear of each other some way off. Where the angle is sharp that is
 * far: there the line that does not run through yields, and where none does both share the sliver between them.
 */
function meetings(
  map: SeamMap,
  one: Neighbor,
  other: Neighbor,
  junctions: readonly [number, number][],
  gap: number,
): Meeting[] {
  const widest = Math.max(one.reach.left, one.reach.right, other.reach.left, other.reach.right);
  return junctions.flatMap(([j, angle]): Meeting[] => {
    const { at, through, onOutline } = map.junctions[j];
    const runsThrough = onOutline ? 'outline' : through;
    const isSharp = angle < SHARPEST;
    const isOne = runsThrough === one.walk.seam;
    if (isSharp && !isOne && runsThrough !== other.walk.seam) return [];
    const yields = !isSharp ? 'neither' : isOne ? 'other' : 'one';
    return [{ x: at[0], y: at[1], around: (2 * widest + gap) / Math.sin(angle), yields }];
  });
}
