import type { Arm, SeamMap } from '../block/seam-map.js';
import { copied } from '../geometry/flat.js';
import type { Point } from '../geometry/point.js';
import { cumulativeLength, type Points } from '../geometry/polyline.js';

/** What an end must stay beside: the line that runs through its junction. */
export interface Bound {
  readonly at: Point;
  readonly own: Arm;
  /** the two arms of the line that runs through */
  readonly through: readonly [Arm, Arm];
  /** how far on this arm's side of it thread must stay, mm; negative when it may run past */
  readonly inside: number;
}

/**
 * Cloth a treatment must stay on at one end: at least `inside` from the line on its `side` (1 left, -1 right of someone
 * walking along it), as far as `around` from the junction `at`. Beyond its ends the line goes on straight.
 */
export interface Cut {
  readonly line: Points;
  readonly side: 1 | -1;
  readonly inside: number;
  readonly at: Point;
  readonly around: number;
}

/** Within this distance of a junction ends are cut, mm: as far as wide treatments at a shallow angle come near a line. */
const AROUND = 40;

/** Makes the cuts of ends. What is known of a line's length is kept, so that many ends on one line cost little. */
export function cutter(map: SeamMap): (bound: Bound) => Cut {
  const lengths = new Map<Points, Float64Array>();
  const lengthsOf = (points: Points) => {
    const known = lengths.get(points);
    if (known) return known;
    const made = cumulativeLength(points);
    lengths.set(points, made);
    return made;
  };
  const armLine = ({ seam, u, sense }: Arm): number[] => {
    const line = seam === 'outline' ? map.outline! : map.seams[seam - 1];
    const closed = seam === 'outline' || map.seams[seam - 1].closed;
    return pointsAlong(line.points, lengthsOf(line.points), u, sense, closed);
  };
  return ({ at, own, through: [one, other], inside }) => {
    const back = armLine(one);
    const line: number[] = [];
    for (let k = back.length - 2; k >= 0; k -= 2) line.push(back[k], back[k + 1]);
    line.push(...at);
    if (other !== one) line.push(...armLine(other));
    const whole = { line: copied(line), side: 1, inside, at, around: AROUND } as const;
    // The cloth is on the side that this arm leads to.
    const [x, y] = [at[0] + Math.cos(own.direction), at[1] + Math.sin(own.direction)];
    return signedDistance(whole.line, x, y) >= 0 ? whole : { ...whole, side: -1 };
  };
}

/** Vertices of a line from u on, up to AROUND away. */
function pointsAlong(points: Points, at: Float64Array, u: number, sense: 1 | -1, closed: boolean): number[] {
  const found: number[] = [];
  const last = at.length - 1;
  const total = at[last];
  let low = 0;
  let high = last;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at[middle] < u) low = middle + 1;
    else high = middle;
  }
  let i = sense === 1 ? low : at[low] > u ? low - 1 : low;
  let round = 0;
  for (let steps = 0; steps <= last; steps++, i += sense) {
    if (i > last || i < 0) {
      if (!closed) break;
      // a closed line repeats its first point
      i = sense === 1 ? 1 : last - 1;
      round += total;
    }
    const away = sense * (at[i] - u) + round;
    if (away > 1e-6) found.push(points[2 * i], points[2 * i + 1]);
    if (away > AROUND) break;
  }
  return found;
}

/** Whether thread may lie at a place. */
export type IsOnCloth = (x: number, y: number) => boolean;

/**
 * Asks whether places lie on the cloth that all cuts leave, quickest for places that follow one another. Whoever is
 * further inside than the place asked before lies away from it is inside too: the distance from a line grows no faster
 * than the way walked.
 *
 * @param within asked too, whatever the cuts leave
 */
export function onCloth(cuts: readonly Cut[], within: IsOnCloth | null = null): IsOnCloth {
  const tests = within ? [...cuts.map(onClothOf), within] : cuts.map(onClothOf);
  if (tests.length === 1) return tests[0];
  return (x, y) => {
    for (let i = 0; i < tests.length; i++) if (!tests[i](x, y)) return false;
    return true;
  };
}

function onClothOf({ line, side, inside, at, around }: Cut): IsOnCloth {
  const [junctionX, junctionY] = at;
  let lastX = junctionX;
  let lastY = junctionY;
  /** how far within the cloth the last place measured lies */
  let room = 0;
  return (x, y) => {
    if (Math.abs(x - junctionX) > around || Math.abs(y - junctionY) > around) return true;
    if (room > 0 && (x - lastX) * (x - lastX) + (y - lastY) * (y - lastY) < room * room) return true;
    const within = side * signedDistance(line, x, y) - inside;
    lastX = x;
    lastY = y;
    room = within;
    return within >= -1e-9;
  };
}

/** Distance from a line whose end segments go on for ever, positive to the left of someone walking along it. */
function signedDistance(line: Points, x: number, y: number): number {
  const last = line.length / 2 - 2;
  let least = Infinity;
  // the segment that is nearest, how far along it, and the way from there
  let nearest = 0;
  let share = 0;
  let acrossX = 0;
  let acrossY = 0;
  for (let i = 0; i <= last; i++) {
    const x0 = line[2 * i];
    const y0 = line[2 * i + 1];
    const dx = line[2 * i + 2] - x0;
    const dy = line[2 * i + 3] - y0;
    const square = dx * dx + dy * dy;
    if (square === 0) continue;
    let t = ((x - x0) * dx + (y - y0) * dy) / square;
    if (i > 0 && t < 0) t = 0;
    if (i < last && t > 1) t = 1;
    const ax = x - x0 - t * dx;
    const ay = y - y0 - t * dy;
    const far = ax * ax + ay * ay;
    if (far >= least) continue;
    least = far;
    nearest = i;
    share = t;
    acrossX = ax;
    acrossY = ay;
  }
  return least < Infinity ? sideAt(line, nearest, share, acrossX, acrossY) * Math.sqrt(least) : least;
}

/** At a vertex the two normals together tell the side. */
function sideAt(line: Points, i: number, t: number, ax: number, ay: number): 1 | -1 {
  const beside = t === 0 && i > 0 ? i - 1 : t === 1 && i + 2 < line.length / 2 ? i + 1 : i;
  if (beside === i) {
    const dx = line[2 * i + 2] - line[2 * i];
    const dy = line[2 * i + 3] - line[2 * i + 1];
    return ax * dy - ay * dx >= 0 ? 1 : -1;
  }
  const own = normalOf(line, i);
  const other = normalOf(line, beside);
  return ax * (own.x + other.x) + ay * (own.y + other.y) >= 0 ? 1 : -1;
}

/** Unit normal of a segment to its left (y down). */
function normalOf(line: Points, i: number): { x: number; y: number } {
  const dx = line[2 * i + 2] - line[2 * i];
  const dy = line[2 * i + 3] - line[2 * i + 1];
  const length = Math.sqrt(dx * dx + dy * dy) || 1;
  return { x: dy / length, y: -dx / length };
}
