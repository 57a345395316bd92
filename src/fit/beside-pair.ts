import Flatbush from 'flatbush';
import type { Box } from '../geometry/box.js';
import type { Reach } from './band.js';
import type { LinePlaces } from './line-places.js';

/** A line's places and what its treatment wants there. */
export interface Side extends LinePlaces {
  readonly reach: Reach;
  readonly widest: number;
  readonly chunks: readonly Chunk[];
  /** over the boxes of the chunks, where they are many */
  readonly index: Flatbush | null;
  readonly box: Box;
}

/** A junction of two lines, how far around it their ends rule, mm, and which of the two yields there. */
export interface Meeting {
  readonly x: number;
  readonly y: number;
  readonly around: number;
  readonly yields: 'one' | 'other' | 'neither';
}

/** Where one line presses another: the place, and what it leaves it there to that hand, mm. */
export interface Pressed {
  readonly place: readonly number[];
  readonly isLeft: readonly boolean[];
  readonly leaves: readonly number[];
}

/** Places that follow each other on a line, and the box around them. */
interface Chunk extends Box {
  readonly from: number;
  readonly to: number;
}

/** Places looked at together. */
const CHUNK = 8;
/** So many chunks are looked through one by one. */
const FEW = 16;

export function sideOf(places: LinePlaces, reach: Reach): Side {
  const chunks = chunksOf(places);
  const widest = Math.max(reach.left, reach.right);
  const box = {
    left: Math.min(...chunks.map(({ left }) => left)),
    top: Math.min(...chunks.map(({ top }) => top)),
    right: Math.max(...chunks.map(({ right }) => right)),
    bottom: Math.max(...chunks.map(({ bottom }) => bottom)),
  };
  return { ...places, reach, widest, chunks, index: chunks.length > FEW ? indexOf(chunks) : null, box };
}

function indexOf(chunks: readonly Chunk[]): Flatbush {
  const index = new Flatbush(chunks.length);
  for (const { left, top, right, bottom } of chunks) index.add(left, top, right, bottom);
  index.finish();
  return index;
}

/**
 * What two lines leave each other where they run side by side. Cost: their places, times those of the other within
 * both their reaches.
 */
export function pressing(
  one: Side,
  other: Side,
  shared: readonly Meeting[],
  gap: number,
): readonly [Pressed, Pressed] {
  const found = [new Pressing(one), new Pressing(other)] as const;
  const around = one.widest + other.widest + gap;
  const held = shared.filter(({ yields }) => yields === 'neither');
  for (const a of one.chunks) {
    if (apart(a, other.box) > around) continue;
    const look = (b: Chunk) => {
      if (apart(a, b) > around || held.some((joint) => holds(joint, a) && holds(joint, b))) return;
      press(found[0], a, found[1], b, shared, around, gap);
    };
    if (!other.index) {
      for (const b of other.chunks) look(b);
      continue;
    }
    other.index.search(a.left - around, a.top - around, a.right + around, a.bottom + around, (k) => {
      look(other.chunks[k]);
      return false;
    });
  }
  return [found[0].done(), found[1].done()];
}

function press(
  one: Pressing,
  a: Chunk,
  other: Pressing,
  b: Chunk,
  shared: readonly Meeting[],
  around: number,
  gap: number,
): void {
  const far = around * around;
  const { x, y } = one.side;
  const { x: otherX, y: otherY } = other.side;
  for (let i = a.from; i < a.to; i++) {
    for (let k = b.from; k < b.to; k++) {
      const dx = otherX[k] - x[i];
      const dy = otherY[k] - y[i];
      if (dx * dx + dy * dy >= far || !seeEachOther(one.side, i, other.side, k, dx, dy)) continue;
      const joint = meetingAt(shared, one.side, i, other.side, k);
      if (!joint || joint.yields === 'one') one.take(i, other.side, k, gap, !joint);
      if (!joint || joint.yields === 'other') other.take(k, one.side, i, gap, !joint);
    }
  }
}

/** What a line is left at its places, as far as it is less than it wants. */
class Pressing {
  /** most pairs leave each other all they want, and need none */
  private left: Float64Array | null = null;
  private right: Float64Array | null = null;

  constructor(readonly side: Side) {}

  /**
   * Narrows place i to what another line leaves it at its place k, or half a step to either side of that. With d from
   * one to the other, n the normal to that hand and b the other's reach, the disc through both allows |d|^2 / (2 d.n)
   * less half a gap; where the other reaches less than that, or does not yield, |a n - d| >= b + gap gives a.
   */
  take(i: number, other: Side, k: number, gap: number, yields: boolean): void {
    const { side } = this;
    const tx = -other.ny[k];
    const ty = other.nx[k];
    const ax = other.x[k] - side.x[i];
    const ay = other.y[k] - side.y[i];
    const along = Math.min(other.step / 2, Math.max(-other.step / 2, -(ax * tx + ay * ty)));
    const dx = ax + along * tx;
    const dy = ay + along * ty;
    const across = dx * side.nx[i] + dy * side.ny[i];
    const n = Math.abs(across);
    const square = dx * dx + dy * dy;
    const least = across > 0 ? this.left : this.right;
    const wants = least ? least[i] : across > 0 ? side.reach.left : side.reach.right;
    if (yields && square >= 2 * n * (wants + gap / 2)) return;
    const clear = (dy * tx - dx * ty > 0 ? other.reach.left : other.reach.right) + gap;
    const root = n * n - square + clear * clear;
    const leaves = root <= 0 ? Infinity : n - Math.sqrt(root);
    const most = Math.max(0, leaves, yields ? square / (2 * n) - gap / 2 : 0);
    if (most < wants) this.to(across > 0)[i] = most;
  }

  private to(isLeft: boolean): Float64Array {
    const { u, reach } = this.side;
    if (isLeft) this.left ??= new Float64Array(u.length).fill(reach.left);
    else this.right ??= new Float64Array(u.length).fill(reach.right);
    return (isLeft ? this.left : this.right)!;
  }

  done(): Pressed {
    const { left, right } = this.side.reach;
    const place: number[] = [];
    const isLeft: boolean[] = [];
    const leaves: number[] = [];
    const length = this.left || this.right ? this.side.u.length : 0;
    for (let i = 0; i < length; i++) {
      for (const hand of [true, false]) {
        const value = (hand ? this.left : this.right)?.[i] ?? Infinity;
        if (value >= (hand ? left : right)) continue;
        place.push(i);
        isLeft.push(hand);
        leaves.push(value);
      }
    }
    return { place, isLeft, leaves };
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

/** Whether one patch, or what may be one, lies to a hand of both places; (dx, dy) leads from one to the other. */
function seeEachOther(one: Side, i: number, other: Side, k: number, dx: number, dy: number): boolean {
  const patch = dx * one.nx[i] + dy * one.ny[i] > 0 ? one.leftPatch[i] : one.rightPatch[i];
  const left = other.leftPatch[k];
  const right = other.rightPatch[k];
  return patch < 0 || left < 0 || right < 0 || left === patch || right === patch;
}

function chunksOf({ u, x, y }: LinePlaces): Chunk[] {
  const chunks: Chunk[] = [];
  for (let from = 0; from < u.length; from += CHUNK) {
    const to = Math.min(u.length, from + CHUNK);
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = from; i < to; i++) {
      left = Math.min(left, x[i]);
      right = Math.max(right, x[i]);
      top = Math.min(top, y[i]);
      bottom = Math.max(bottom, y[i]);
    }
    chunks.push({ from, to, left, top, right, bottom });
  }
  return chunks;
}

/** Least distance of two boxes. */
function apart(a: Box, b: Box): number {
  const dx = Math.max(0, a.left - b.right, b.left - a.right);
  const dy = Math.max(0, a.top - b.bottom, b.top - a.bottom);
  return Math.sqrt(dx * dx + dy * dy);
}

/** Whether a whole chunk is so near to a junction that ends rule there. */
function holds({ x, y, around }: Meeting, { left, top, right, bottom }: Chunk): boolean {
  const dx = Math.max(x - left, right - x);
  const dy = Math.max(y - top, bottom - y);
  return dx * dx + dy * dy <= around * around;
}
