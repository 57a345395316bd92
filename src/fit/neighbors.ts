import Flatbush from 'flatbush';
import type { SeamMap } from '../block/seam-map.js';
import { wrapAngle } from '../geometry/point.js';
import type { Reach } from './band.js';
import { apart, type Meeting, type Pressed, pressing, type Side, sideOf } from './beside-pair.js';
import { placesAlong } from './line-places.js';
import type { Memory } from './memory.js';
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
  const sides = lines.map((line) =>
    memory.of('side', [line.walk, line.reach], () =>
      sideOf(placesAlong(map, line.walk, Math.max(line.reach.left, line.reach.right)), line.reach),
    ),
  );
  const pressed: Pressed[][] = lines.map(() => []);
  const junctions = sharedJunctions(map, lines);
  for (const [a, b] of nearPairs(sides, gap)) {
    const [one, other] = memory.of('pressing', [sides[a], sides[b]], () =>
      pressing(
        sides[a],
        sides[b],
        meetings(map, lines[a], lines[b], junctions.get(pairOf(a, b, lines.length)) ?? [], gap),
        gap,
      ),
    );
    if (one.place.length) pressed[a].push(one);
    if (other.place.length) pressed[b].push(other);
  }
  return sides.map((side, l) =>
    pressed[l].length === 0 ? null : memory.of('beside', [side, ...pressed[l]], () => left(side, pressed[l])),
  );
}

/** Pairs of lines that may press each other, the earlier first, in the order of the lines. */
function nearPairs(sides: readonly Side[], gap: number): [number, number][] {
  const index = new Flatbush(sides.length);
  for (const { box } of sides) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  const most = Math.max(...sides.map(({ widest }) => widest));
  const pairs: [number, number][] = [];
  sides.forEach((side, a) => {
    const around = side.widest + most + gap;
    const { minX, minY, maxX, maxY } = side.box;
    const near: number[] = [];
    index.search(minX - around, minY - around, maxX + around, maxY + around, (b) => {
      if (b > a && apart(side.box, sides[b].box) <= side.widest + sides[b].widest + gap) near.push(b);
      return false;
    });
    for (const b of near.sort((one, other) => one - other)) pairs.push([a, b]);
  });
  return pairs;
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

const pairOf = (a: number, b: number, count: number): number => a * count + b;

/** For each pair of lines that meet, the junctions where they do, and the angle between their arms. */
function sharedJunctions(map: SeamMap, lines: readonly Neighbor[]): Map<number, [number, number][]> {
  const number = new Map(lines.map(({ walk }, l) => [walk.seam, l]));
  const found = new Map<number, [number, number][]>();
  map.junctions.forEach(({ arms }, j) => {
    arms.forEach((arm, i) => {
      const a = number.get(arm.seam);
      if (a === undefined) return;
      for (const other of arms.slice(i + 1)) {
        const b = number.get(other.seam);
        if (b === undefined || a === b) continue;
        const angle = Math.min(Math.PI / 2, Math.abs(wrapAngle(other.direction - arm.direction)));
        const key = pairOf(Math.min(a, b), Math.max(a, b), lines.length);
        const known = found.get(key);
        if (known) known.push([j, angle]);
        else found.set(key, [[j, angle]]);
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
