import type { Block } from '../../src/block/block.js';
import type { Arm, Junction, SeamMap } from '../../src/block/seam-map.js';
import type { BlockSource, Dressing } from '../../src/formats/dressing.js';
import { placedPoint, turnedVector } from '../../src/geometry/placement.js';
import { distance, wrapAngle } from '../../src/geometry/point.js';
import { cumulativeLength } from '../../src/geometry/polyline.js';
import { placementAsked } from '../../src/placed.js';
import type { Wishable } from './line-messages.js';
import type { Line, MeetingPlace } from './messages.js';

/** The block's source as it is when the maker says nothing of its junctions. */
export const withoutWishes = (source: BlockSource): BlockSource => {
  const { join: _, split: __, ...rest } = source;
  return { ...rest, through: [] };
};

export const hasWishes = ({ through, join = [], split = [] }: BlockSource): boolean =>
  through.length + join.length + split.length > 0;

/**
 * The junctions inside the block that a seam comes to, from its start, and what the maker can say of each.
 * @param plain the map as it is when the maker says nothing
 */
export function meetingsOf(
  { map }: Block,
  plain: SeamMap,
  dressing: Dressing,
  line: Line,
): readonly MeetingPlace[] {
  const seam = map.seams.find(({ id }) => id === line);
  if (!seam) return [];
  const placement = placementAsked(map, dressing);
  const length = cumulativeLength(seam.points).at(-1)!;
  return map.junctions
    .filter(({ arms, onOutline }) => !onOutline && arms.some((arm) => arm.seam === line))
    .map((junction): MeetingPlace => {
      const { arms, at, through } = junction;
      const before = nearestTo(plain.junctions, at);
      const named = arms.flatMap((arm): Wishable[] => {
        const known = armLike(before, arm);
        return typeof arm.seam === 'number' && typeof known?.seam === 'number'
          ? [{ now: arm.seam, plain: known.seam }]
          : [];
      });
      const own = named.filter(({ now }) => now === line);
      const runsOn = [...new Set(named.map(({ now }) => now))].flatMap((now) => {
        const of = named.filter((one) => one.now === now);
        return of.length > 1 ? [of[0]] : [];
      });
      const others = [...new Set(named.flatMap(({ now }) => (now === line ? [] : [now])))];
      return {
        at: [tidy(at[0]), tidy(at[1])],
        placed: placedPoint(at, placement) as [number, number],
        arms: arms.flatMap(({ seam: id, direction }) => {
          if (id === 'outline') return [];
          const way = turnedVector([Math.cos(direction), Math.sin(direction)], placement.turn);
          return [{ seam: id, toward: [way[0], way[1]] }];
        }),
        along: arms.find((arm) => arm.seam === line)!.u / length,
        own: own[0]?.plain ?? seam.id,
        others,
        through,
        runsOn,
        joins: others
          .map((id) => named.find(({ now }) => now === id)!)
          .filter(({ plain: id }) => own.some((one) => one.plain !== id)),
        split: own.length > 1 && own[0].plain === own[1].plain ? own[0] : null,
        said: saidAt(dressing.block, plain, before),
      };
    })
    .sort((a, b) => a.along - b.along);
}

/** What the maker says of a junction. */
function saidAt(
  { through, join = [], split = [] }: BlockSource,
  { junctions }: SeamMap,
  junction: Junction,
): MeetingPlace['said'] {
  const isHere = ({ at }: { readonly at: readonly [number, number] }) =>
    nearestTo(junctions, [at[0], at[1]]) === junction;
  return {
    through: through.find(isHere)?.seam ?? null,
    join: join.find(isHere)?.seams ?? null,
    split: split.find(isHere)?.seam ?? null,
  };
}

const nearestTo = (junctions: readonly Junction[], at: readonly [number, number]): Junction =>
  junctions.reduce((a, b) => (distance(b.at, [at[0], at[1]]) < distance(a.at, [at[0], at[1]]) ? b : a));

/** The arm of a junction that leaves it in the same direction. */
const armLike = ({ arms }: Junction, { direction }: Arm): Arm | undefined =>
  arms.reduce<Arm | undefined>(
    (a, b) => (a && turn(a.direction, direction) <= turn(b.direction, direction) ? a : b),
    undefined,
  );

const turn = (a: number, b: number): number => Math.abs(wrapAngle(a - b));
const tidy = (mm: number): number => Math.round(mm * 1000) / 1000;
