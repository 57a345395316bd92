import { wrapAngle } from '../geometry/point.js';
import type { Unit } from '../stitches/stitch.js';
import type { Layer } from './lay.js';
import { acrossLine, alongLine, type Place, type Placing } from './unit-places.js';

/** Figures beside each other keep this far apart, mm: a thread of 0.4 and 0.2 clear. */
export const APART = 0.6;
/** No figure is made smaller than this share for the sake of its neighbor. */
export const SMALLEST = 0.55;
/** Headings that differ by less are one, radians. */
const SAME_HEADING = 1e-6;

/**
 * By how much figures that keep their shape are drawn smaller, unit by unit: on the inner side of a bend, where those of
 * one hand lean together, none reaches over the line half way between it and its neighbor by more than it does on a
 * straight. Null where none has to give way. Linear in the units and the points of one.
 */
export function figuresApart(placing: Placing, places: readonly Place[], lay: Layer): Float64Array | null {
  if (!placing.runs.some(({ unit }) => anchorOf(unit) >= 0)) return null;
  const step = placing.alternate ? 2 : 1;
  const stands = places.map((place) => standOf(place, lay));
  const shares = new Float64Array(places.length).fill(1);
  const outlines = new Map<Unit, Float64Array>();
  const outlineOf = (unit: Unit, anchor: number): Float64Array => {
    const known = outlines.get(unit) ?? outline(unit, anchor);
    outlines.set(unit, known);
    return known;
  };
  const pairs = placing.closed && places.length > 2 * step ? places.length : places.length - step;
  let isAny = false;
  for (let i = 0; i < pairs; i++) {
    const k = (i + step) % places.length;
    const [a, b] = [stands[i], stands[k]];
    if (!a || !b) continue;
    const turn = wrapAngle(b.theta - a.theta);
    if (Math.abs(turn) < SAME_HEADING) continue;
    const heading = a.theta + turn / 2;
    const room = ((b.x - a.x) * Math.cos(heading) + (b.y - a.y) * Math.sin(heading) - APART) / 2;
    const length = placing.closed && k < i ? placing.laying.guide.length : 0;
    const usual = (b.u + length - a.u - APART) / 2;
    // the figure before reaches on along the line, the one behind back
    const share = [a, b].map(({ place, anchor, scale }, n) => {
      const points = outlineOf(place.run.unit, anchor);
      const sense = n === 0 ? 1 : -1;
      const reaching = (half: number) => sense * scale * furthest(points, sense, place.hand, half);
      const over = (needed: number, given: number) => (needed > given ? Math.max(0, given) / needed : 1);
      return over(reaching(turn / 2), room) / Math.max(1e-3, over(reaching(0), usual));
    });
    const least = Math.max(SMALLEST, Math.min(1, ...share));
    if (least === 1) continue;
    isAny = true;
    shares[i] = Math.min(shares[i], least);
    shares[k] = Math.min(shares[k], least);
  }
  return isAny ? shares : null;
}

/** Where the figure of a place stands: on the cloth, and its u along the line. */
interface Stand {
  readonly place: Place;
  readonly anchor: number;
  readonly u: number;
  readonly x: number;
  readonly y: number;
  readonly theta: number;
  readonly scale: number;
}

function standOf(place: Place, lay: Layer): Stand | null {
  const { unit } = place.run;
  const anchor = anchorOf(unit);
  if (anchor < 0) return null;
  const u = alongLine(place, unit.nodes[2 * anchor]);
  lay.at(u, acrossLine(place, unit.nodes[2 * anchor + 1]));
  const { out } = lay;
  return { place, anchor, u, x: out[0], y: out[1], theta: out[2], scale: out[3] };
}

const anchorOf = (unit: Unit): number => unit.legs.find(({ bends }) => !bends)?.anchor ?? -1;

/** The points of a figure, seen from its anchor: du dv du dv ... */
function outline({ legs, nodes }: Unit, anchor: number): Float64Array {
  const points = legs.filter((leg) => !leg.bends && leg.anchor === anchor).flatMap(({ path }) => [...path]);
  return Float64Array.from(points, (value, i) => value - nodes[2 * anchor + (i % 2)]);
}

/**
 * How far a figure reaches on (sense 1) or back (-1) along a line that has turned by `half` where it meets its neighbor,
 * mm; left is positive in v and headings grow to the right.
 */
function furthest(points: Float64Array, sense: 1 | -1, hand: 1 | -1, half: number): number {
  const [cos, sin] = [Math.cos(half), Math.sin(half)];
  let most = 0;
  for (let i = 0; i < points.length; i += 2) {
    const along = points[i] * cos - sense * hand * points[i + 1] * sin;
    if (sense * along > sense * most) most = along;
  }
  return most;
}
