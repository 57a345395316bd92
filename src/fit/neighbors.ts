import type { SeamMap } from '../block/seam-map.js';
import type { Box } from '../geometry/box.js';
import { type GuideLine, isStraight } from '../geometry/guide-line.js';
import { nearestOnSegment } from '../geometry/nearest.js';
import { type Point, wrapAngle } from '../geometry/point.js';
import type { Reach } from './band.js';
import { type Meeting, type Pressed, pressing, type Side, sideOf } from './beside-pair.js';
import { placesAlong } from './line-places.js';
import { type Answers, either, type Memory, withLinked } from './memory.js';
import { grown, nearLines } from './near-lines.js';
import { isSame } from './same.js';
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
 * What every line's neighbors leave it; null for a line that none comes near. Where the
 * reaches of two lines across a patch are more than lies between them, each gets half of the clear distance less half a
 * gap, or what the other leaves of it when that is more. Near a junction of both their ends keep them apart, or one lies
 * over the other, and nothing is narrowed. Cost: n log n in the places, one a millimeter or so.
 *
 * @param memory what is known of the same map at the same gap
 */
export function besideNeighbors(
  map: SeamMap,
  lines: Answers<Neighbor>,
  gap: number,
  memory: Memory,
): Answers<Beside | null> {
  const count = lines.of.length;
  const sides = memory.each('side', count, lines.changed, (l, last: SideOf | undefined): SideOf => {
    const { walk, reach } = lines.of[l];
    return last?.walk === walk && last.reach === reach ? last : sideAlong(map, walk, reach);
  });
  const near = nearLines('near sides', sides, ({ box, widest }) => grown(box, widest + gap / 2), memory);
  /** lines of which a pair is looked at anew */
  const anew = new Set(near.changed);
  const pairs = memory.each(
    'pressing',
    count,
    withLinked(either(sides.changed, near.changed), near.of),
    (l, last: ReadonlyMap<number, Pair> | undefined) => {
      const found = new Map<number, Pair>();
      for (const other of near.of[l]) if (other > l) found.set(other, pairOf(l, other, last?.get(other)));
      return found;
    },
  );
  return memory.each('beside', count, anew, (l, last: Beside | null | undefined) => {
    const own: Pressed[] = [];
    for (const other of near.of[l]) {
      const one = other > l ? pairs.of[l].get(other)!.pressed[0] : pairs.of[other].get(l)!.pressed[1];
      if (one.place.length > 0) own.push(one);
    }
    const found = own.length > 0 ? left(sides.of[l].side(), own) : null;
    return last !== undefined && isSame(found, last) ? last : found;
  });

  function pairOf(a: number, b: number, last: Pair | undefined): Pair {
    const of = [sides.of[a], sides.of[b]] as const;
    if (last?.of[0] === of[0] && last.of[1] === of[1]) return last;
    anew.add(a).add(b);
    const known = memory.once('shared junctions', () => sharedJunctions(map));
    const joints = known.get(nameOf(of[0].walk.seam, of[1].walk.seam)) ?? [];
    const shared = meetings(map, ...of, joints, gap);
    const isClear = areClear(...of, shared, gap);
    return { of, pressed: isClear ? NEITHER : pressing(of[0].side(), of[1].side(), shared, gap) };
  }
}

/** A line as its neighbors see it. */
interface SideOf extends Neighbor {
  readonly box: Box;
  readonly widest: number;
  readonly isStraight: boolean;
  /** its places, which straight lines far enough from each other never need */
  readonly side: () => Side;
}

function sideAlong(map: SeamMap, walk: Walk, reach: Reach): SideOf {
  const widest = Math.max(reach.left, reach.right);
  let made: Side | null = null;
  const side = (): Side => {
    made ??= sideOf(placesAlong(map, walk, widest), reach);
    return made;
  };
  return { walk, reach, box: boxOfGuide(walk.guide), widest, isStraight: isStraight(walk.guide), side };
}

function boxOfGuide({ x, y }: GuideLine): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < x.length; i++) {
    left = Math.min(left, x[i]);
    right = Math.max(right, x[i]);
    top = Math.min(top, y[i]);
    bottom = Math.max(bottom, y[i]);
  }
  return { left, top, right, bottom };
}

/**
 * Whether two straight lines need no closer look: they lie further apart than both reach, or the only places that near
 * are those about the junction where they meet, whose ends keep them apart.
 */
function areClear(one: SideOf, other: SideOf, shared: readonly Meeting[], gap: number): boolean {
  if (!one.isStraight || !other.isStraight) return false;
  if (shared.length > 0) return shared.every(({ yields }) => yields === 'neither');
  return segmentsApart(endsOf(one.walk.guide), endsOf(other.walk.guide)) >= one.widest + other.widest + gap;
}

const endsOf = ({ x, y }: GuideLine): readonly [Point, Point] => [
  [x[0], y[0]],
  [x[x.length - 1], y[y.length - 1]],
];

/** Least distance of two straight lines that do not cross; where they do, that of an end. */
function segmentsApart([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): number {
  return Math.min(
    nearestOnSegment(a, c, d).distance,
    nearestOnSegment(b, c, d).distance,
    nearestOnSegment(c, a, b).distance,
    nearestOnSegment(d, a, b).distance,
  );
}

const NOTHING: Pressed = { place: [], isLeft: [], leaves: [] };
const NEITHER = [NOTHING, NOTHING] as const;

/** Two lines near each other, the earlier one first, and where either presses the other. */
interface Pair {
  readonly of: readonly [SideOf, SideOf];
  readonly pressed: readonly [Pressed, Pressed];
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
const nameOf = (a: Seam, b: Seam): string => `${a}/${b}`;

/** For each pair of seams that meet, either first, the junctions where they do, and the angle between their arms. */
function sharedJunctions({ junctions }: SeamMap): Map<string, [number, number][]> {
  const found = new Map<string, [number, number][]>();
  junctions.forEach(({ arms }, j) => {
    arms.forEach((arm, i) => {
      for (const other of arms.slice(i + 1)) {
        if (arm.seam === other.seam) continue;
        const angle = Math.min(Math.PI / 2, Math.abs(wrapAngle(other.direction - arm.direction)));
        const known = found.get(nameOf(arm.seam, other.seam)) ?? [];
        known.push([j, angle]);
        found.set(nameOf(arm.seam, other.seam), known).set(nameOf(other.seam, arm.seam), known);
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
