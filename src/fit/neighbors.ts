import Flatbush from 'flatbush';
import type { SeamMap } from '../block/seam-map.js';
import { wrapAngle } from '../geometry/point.js';
import type { Reach } from './band.js';
import { type LinePlaces, placesAlong } from './line-places.js';
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
/** Places looked at together. */
const CHUNK = 8;

/**
 * What every line's neighbors leave it, in the order of the lines; null for a line that none comes near. Where the
 * reaches of two lines across a patch are more than lies between them, each gets half of the clear distance less half a
 * gap, or what the other leaves of it when that is more. Near a junction of both their ends keep them apart, or one lies
 * over the other, and nothing is narrowed. Cost: n log n in the places, one a millimeter or so.
 */
export function besideNeighbors(map: SeamMap, lines: readonly Neighbor[], gap: number): (Beside | null)[] {
  if (lines.length < 2) return lines.map(() => null);
  const sides = lines.map(({ walk, reach }): Side => {
    const places = placesAlong(map, walk, widest(reach));
    const n = places.u.length;
    return {
      ...places,
      reach,
      most: { left: new Float64Array(n).fill(Infinity), right: new Float64Array(n).fill(Infinity) },
    };
  });
  const chunks = sides.flatMap((side, line) => chunksOf(side, line));
  const index = new Flatbush(chunks.length);
  for (const { minX, minY, maxX, maxY } of chunks) index.add(minX, minY, maxX, maxY);
  index.finish();
  const most = Math.max(...lines.map(({ reach }) => widest(reach)));
  const meeting = meetings(map, lines, gap);
  chunks.forEach((a, c) => {
    const own = widest(lines[a.line].reach) + gap;
    const around = own + most;
    index.search(a.minX - around, a.minY - around, a.maxX + around, a.maxY + around, (d) => {
      const b = chunks[d];
      // every pair is looked at once, for both
      if (d <= c || b.line === a.line) return false;
      if (apart(a, b) > own + widest(lines[b.line].reach)) return false;
      const shared = meeting.get(pairOf(a.line, b.line, lines.length)) ?? [];
      if (shared.some((joint) => joint.yields < 0 && holds(joint, a) && holds(joint, b))) return false;
      narrowBoth(sides[a.line], a, sides[b.line], b, shared, gap);
      return false;
    });
  });
  return sides.map(({ u, most: { left, right }, reach }) =>
    left.some((value) => value < reach.left) || right.some((value) => value < reach.right)
      ? { u, left, right }
      : null,
  );
}

/** A line's places, what it wants there and what its neighbors leave it of that. */
interface Side extends LinePlaces {
  readonly reach: Reach;
  readonly most: { readonly left: Float64Array; readonly right: Float64Array };
}

const widest = ({ left, right }: Reach): number => Math.max(left, right);

function narrowBoth(
  one: Side,
  a: Chunk,
  other: Side,
  b: Chunk,
  shared: readonly Meeting[],
  gap: number,
): void {
  const far = (widest(one.reach) + widest(other.reach) + gap) ** 2;
  for (let i = a.from; i < a.to; i++) {
    for (let k = b.from; k < b.to; k++) {
      if ((other.x[k] - one.x[i]) ** 2 + (other.y[k] - one.y[i]) ** 2 >= far) continue;
      if (!seeEachOther(one, i, other, k)) continue;
      const joint = meetingAt(shared, one, i, other, k);
      if (!joint || joint.yields === a.line) narrow(one, i, other, k, gap, !joint);
      if (!joint || joint.yields === b.line) narrow(other, k, one, i, gap, !joint);
    }
  }
}

function meetingAt(
  shared: readonly Meeting[],
  one: Side,
  i: number,
  other: Side,
  k: number,
): Meeting | undefined {
  for (const joint of shared) {
    const far = joint.around ** 2;
    if ((one.x[i] - joint.x) ** 2 + (one.y[i] - joint.y) ** 2 > far) continue;
    if ((other.x[k] - joint.x) ** 2 + (other.y[k] - joint.y) ** 2 <= far) return joint;
  }
  return undefined;
}

/** Whether one patch, or what may be one, lies to a hand of both places. */
function seeEachOther(one: Side, i: number, other: Side, k: number): boolean {
  const [dx, dy] = [other.x[k] - one.x[i], other.y[k] - one.y[i]];
  const isLeft = dx * Math.sin(one.theta[i]) - dy * Math.cos(one.theta[i]) > 0;
  const patch = isLeft ? one.leftPatch[i] : one.rightPatch[i];
  const [left, right] = [other.leftPatch[k], other.rightPatch[k]];
  return patch < 0 || left < 0 || right < 0 || left === patch || right === patch;
}

/**
 * Narrows place i to what another line leaves it at its place k, or half a step to either side of that. With d from one
 * to the other, n the normal to that hand and b the other's reach, the disc through both allows |d|^2 / (2 d.n) less half a
 * gap; where the other reaches less than that, or does not yield, |a n - d| >= b + gap gives a.
 */
function narrow(one: Side, i: number, other: Side, k: number, gap: number, yields: boolean): void {
  const [tx, ty] = [Math.cos(other.theta[k]), Math.sin(other.theta[k])];
  const [ax, ay] = [other.x[k] - one.x[i], other.y[k] - one.y[i]];
  const along = Math.min(other.step / 2, Math.max(-other.step / 2, -(ax * tx + ay * ty)));
  const [dx, dy] = [ax + along * tx, ay + along * ty];
  const across = dx * Math.sin(one.theta[i]) - dy * Math.cos(one.theta[i]);
  const n = Math.abs(across);
  const square = dx * dx + dy * dy;
  const hand = across > 0 ? 'left' : 'right';
  const wanted = Math.min(one.reach[hand], one.most[hand][i]);
  if (yields && square >= 2 * n * (wanted + gap / 2)) return;
  const clear = other.reach[dy * tx - dx * ty > 0 ? 'left' : 'right'] + gap;
  const root = n * n - square + clear * clear;
  const leaves = root <= 0 ? Infinity : n - Math.sqrt(root);
  const most = Math.max(0, leaves, yields ? square / (2 * n) - gap / 2 : 0);
  if (most < wanted) one.most[hand][i] = most;
}

/** Places that follow each other on a line, and the box around them. */
interface Chunk {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

function chunksOf({ u, x, y }: LinePlaces, line: number): Chunk[] {
  const chunks: Chunk[] = [];
  for (let from = 0; from < u.length; from += CHUNK) {
    const to = Math.min(u.length, from + CHUNK);
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = from; i < to; i++) {
      minX = Math.min(minX, x[i]);
      maxX = Math.max(maxX, x[i]);
      minY = Math.min(minY, y[i]);
      maxY = Math.max(maxY, y[i]);
    }
    chunks.push({ line, from, to, minX, minY, maxX, maxY });
  }
  return chunks;
}

function apart(a: Chunk, b: Chunk): number {
  const dx = Math.max(0, a.minX - b.maxX, b.minX - a.maxX);
  const dy = Math.max(0, a.minY - b.maxY, b.minY - a.maxY);
  return Math.hypot(dx, dy);
}

/** Whether a whole chunk is so near to a junction that ends rule there. */
function holds({ x, y, around }: Meeting, { minX, minY, maxX, maxY }: Chunk): boolean {
  return Math.hypot(Math.max(x - minX, maxX - x), Math.max(y - minY, maxY - y)) <= around;
}

/** A junction of two lines, how far around it their ends rule, mm, and which line yields there; -1 for none. */
interface Meeting {
  readonly x: number;
  readonly y: number;
  readonly around: number;
  readonly yields: number;
}

const pairOf = (a: number, b: number, count: number): number => Math.min(a, b) * count + Math.max(a, b);

/**
 * Straight bands that leave a junction at an angle are clear of each other some way off. Where the angle is sharp that is
 * far: there the line that does not run through yields, and where none does both share the sliver between them.
 */
function meetings(map: SeamMap, lines: readonly Neighbor[], gap: number): Map<number, Meeting[]> {
  const number = new Map(lines.map(({ walk }, l) => [walk.seam, l]));
  const found = new Map<number, Meeting[]>();
  for (const { at, arms, through, onOutline } of map.junctions) {
    arms.forEach((arm, i) => {
      const a = number.get(arm.seam);
      if (a === undefined) return;
      for (const other of arms.slice(i + 1)) {
        const b = number.get(other.seam);
        if (b === undefined || a === b) continue;
        const angle = Math.min(Math.PI / 2, Math.abs(wrapAngle(other.direction - arm.direction)));
        const runsThrough = number.get(onOutline ? 'outline' : (through ?? 0));
        const isSharp = angle < SHARPEST;
        if (isSharp && runsThrough !== a && runsThrough !== b) continue;
        const both = 2 * Math.max(widest(lines[a].reach), widest(lines[b].reach)) + gap;
        const joint = {
          x: at[0],
          y: at[1],
          around: both / Math.sin(angle),
          yields: isSharp ? (runsThrough === a ? b : a) : -1,
        };
        const key = pairOf(a, b, lines.length);
        found.set(key, [...(found.get(key) ?? []), joint]);
      }
    });
  }
  return found;
}
