import { KNOT_RING } from './holes.js';
import { type NeedlePoints, SHORTEST_EVER } from './needle-points.js';
import type { Craft } from './run.js';

/** Holes of the inner turn, and at most so many of the outer one. */
const INNER = 5;
const OUTER = 8;
/** A knot's stitches are as short as any may be, mm. */
const LEAST = SHORTEST_EVER + 0.01;
/** From one hole of the inner turn to the next, at least, radians. */
const INNER_STEP = (2 * Math.PI) / INNER;

/** Radius of the outer turn's holes, mm: the thread on it reaches the knot's size. */
export const knotRadius = (size: number, { threadWidth }: Pick<Craft, 'threadWidth'>): number =>
  Math.max(KNOT_RING + 0.1, (size - threadWidth) / 2);

/** A knot, and where the needle goes from it. */
export interface Knot {
  readonly x: number;
  readonly y: number;
  /** mm */
  readonly size: number;
  /** 1 turns to the left, -1 to the right, where nothing speaks for the other */
  readonly hand: 1 | -1;
  /** direction in which the thread leaves, radians; null where it ends here */
  readonly toward: number | null;
}

/**
 * A French knot in two turns about its center, which is not pierced: five holes on the inner turn, as many on the outer
 * as keep the least stitch, and a closed one. Starts on the side where the needle stands and ends on the side where it goes on,
 * so that no thread lies over the knot: it turns to the hand, and steps as wide on the inner turn, as brings it there.
 */
export function workKnot(points: NeedlePoints, { x, y, size, hand, toward }: Knot, craft: Craft): void {
  const outer = knotRadius(size, craft);
  const around = Math.min(OUTER, Math.floor(Math.PI / Math.asin(Math.min(1, LEAST / (2 * outer)))));
  const start = Math.atan2(points.y - y, points.x - x);
  // the outer turn begins as far on from the last inner hole as the least stitch asks
  const lean = Math.acos(Math.min(1, (KNOT_RING ** 2 + outer ** 2 - LEAST ** 2) / (2 * KNOT_RING * outer)));
  const once = (INNER - 1) * INNER_STEP;
  let turning = hand;
  let inner = once;
  if (toward !== null) {
    // as little more than the least turn as leads there, to either hand
    const [same, other] = [hand, -hand].map((one) => once + positive(one * (toward - start) - lean - once));
    turning = same <= other + SAME ? hand : hand === 1 ? -1 : 1;
    inner = Math.min(same, other);
  }
  for (let i = 0; i < INNER; i++) {
    const angle = start + (turning * inner * i) / (INNER - 1);
    points.sew(x + KNOT_RING * Math.cos(angle), y + KNOT_RING * Math.sin(angle));
  }
  const first = start + turning * (inner + lean);
  for (let i = 0; i <= around; i++) {
    const angle = first + (turning * 2 * Math.PI * i) / around;
    points.sew(x + outer * Math.cos(angle), y + outer * Math.sin(angle));
  }
}

/** Turns that differ by less are the same, radians. */
const SAME = 1e-9;

/** The same turn from 0 up to a whole one. */
function positive(turn: number): number {
  const rest = turn % (2 * Math.PI);
  return rest < -SAME ? rest + 2 * Math.PI : Math.max(0, rest);
}
