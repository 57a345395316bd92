import { nearestOnSegment } from '../geometry/nearest.js';
import type { Point } from '../geometry/point.js';
import type { Unit, UnitLeg } from '../stitches/stitch.js';

/** Units in a row, so that legs are seen beside those of the next one and the next but one. */
const IN_A_ROW = 3;

/**
 * How far apart the legs of one thread lie, mm, by the names of the two: 0 where they meet or cross. Knots, petals and cords
 * are left out, since they fill their place. Units are taken as they stand in a row, every other one with left and right
 * exchanged in a glide; an ornament stands alone. Quadratic in the points of three units.
 */
export function legGaps({ length, legs }: Unit, glide: boolean): ReadonlyMap<string, number> {
  const visible = legs.filter(({ kind, size }) => kind !== 'under' && size === 0);
  const row = Array.from({ length: length > 0 ? IN_A_ROW : 1 }, (_, unit) => {
    const hand = glide && unit % 2 === 1 ? -1 : 1;
    return visible.map((leg) => ({ leg, unit, points: pointsOf(leg, unit * length, hand) }));
  }).flat();
  const gaps = new Map<string, number>();
  row.forEach((one, i) => {
    for (const other of row.slice(i + 1)) {
      const isSame = one.unit === other.unit && one.leg.class === other.leg.class;
      if (isSame || one.leg.thread !== other.leg.thread) continue;
      const names = `"${one.leg.name}" and "${other.leg.name}"${PLACE[other.unit - one.unit]}`;
      const apart = between(one.points, other.points);
      gaps.set(names, Math.min(apart, gaps.get(names) ?? apart));
    }
  });
  return gaps;
}

const PLACE = ['', ' of the next repeat', ' of the next repeat but one'];

function pointsOf({ path }: UnitLeg, shift: number, hand: 1 | -1): Point[] {
  const points: Point[] = [];
  for (let i = 0; i < path.length; i += 2) points.push([path[i] + shift, hand * path[i + 1]]);
  return points;
}

/** Distance of two lines from each other, 0 where they cross. */
function between(one: readonly Point[], other: readonly Point[]): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < one.length; i++) {
    for (let j = 1; j < other.length; j++) {
      const [a, b, c, d] = [one[i - 1], one[i], other[j - 1], other[j]];
      if (crosses(a, b, c, d)) return 0;
      nearest = Math.min(
        nearest,
        nearestOnSegment(a, c, d).distance,
        nearestOnSegment(b, c, d).distance,
        nearestOnSegment(c, a, b).distance,
        nearestOnSegment(d, a, b).distance,
      );
    }
  }
  return nearest;
}

const side = ([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number =>
  (bx - ax) * (py - ay) - (by - ay) * (px - ax);

const crosses = (a: Point, b: Point, c: Point, d: Point): boolean =>
  side(a, c, d) * side(b, c, d) < 0 && side(c, a, b) * side(d, a, b) < 0;
