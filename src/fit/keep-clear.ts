import type { KeptArea } from '../formats/line-drawing.js';
import { areaIndex, type SignedDistance } from '../geometry/area-index.js';
import { boxesMeet, boxOf } from '../geometry/box.js';
import { frameFinder } from '../geometry/guide-frame.js';
import type { GuideLine } from '../geometry/guide-line.js';
import type { Reach } from './band.js';
import { LONGEST_MITRE } from './mitre.js';

/** Places along a line where it is looked how far an area is, mm apart. */
const STEP = 0.4;
/** Passes of thread lie beside the leg that asks for them by this at most, mm. */
const ASIDE = 0.25;
/** A way out to an area is known to this, mm. */
const FINE = 0.01;
/** Steps of one way out: each covers what is certainly clear, and only a way that grazes an area needs many. */
const STEPS = 60;
/** Beside a corner a line leans its repeats over as much as this many of them, and an end leans by this slope at most. */
const LEANING_REPEATS = 2;
const LEAN = 0.6;

/** What areas that are kept clear leave a treatment: mm at places along its line, Infinity where none is near. */
export interface Kept {
  readonly u: Float64Array;
  readonly left: Float64Array;
  readonly right: Float64Array;
  /** the area that covers the line itself there, or lies closer to it than the gap: index into the areas, or -1 */
  readonly covers: Int32Array;
  /** the area that leaves it least there; -1 where none is near */
  readonly nearest: Int32Array;
}

/** How a treatment spreads along its line: what it has at one place reaches as far as this to both sides, mm. */
export interface Spread {
  /** half of its longest leg: between two needle points thread runs straight */
  readonly legs: number;
  /** figures on its seats keep their shape */
  readonly figures: number;
  /** wanted length of a repeat */
  readonly repeat: number;
}

/**
 * What areas leave of the reach beside a line: from every place straight out to either hand until an area is no further
 * than the gap. Beside corners and ends, where repeats lean, what is there counts for its neighbors too. Null when no
 * area is near. Cost: a few distances to the areas every 0.4 mm where one is near.
 */
export function besideKept(
  guide: GuideLine,
  areas: readonly KeptArea[],
  reach: Reach,
  spread: Spread,
  gap: number,
): Kept | null {
  const widest = Math.max(reach.left, reach.right);
  const around = widest * LONGEST_MITRE + gap + spread.figures + 1;
  const near = areasNear(guide, areas, around);
  if (near.length === 0) return null;
  const margin = Math.hypot(gap + ASIDE, STEP);
  const raw = lookedAt(guide, near, reach, margin, around);
  if (raw.nearest.every((area) => area < 0)) return null;
  return spreadOut(guide, raw, spread, widest);
}

interface Near {
  readonly index: number;
  readonly away: SignedDistance;
}

function areasNear(guide: GuideLine, areas: readonly KeptArea[], around: number): Near[] {
  const line = new Float64Array(2 * guide.u.length);
  for (let i = 0; i < guide.u.length; i++) {
    line[2 * i] = guide.x[i];
    line[2 * i + 1] = guide.y[i];
  }
  const { left, top, right, bottom } = boxOf([line]);
  const box = { left: left - around, top: top - around, right: right + around, bottom: bottom + around };
  return areas.flatMap(({ area }, index) =>
    boxesMeet(boxOf(area.rings), box) ? [{ index, away: areaIndex(area) }] : [],
  );
}

/** How far it is straight out from a place until an area is closer than the margin; Infinity when that is past `most`. */
function wayOut(
  { away }: Near,
  [x, y]: readonly [number, number],
  [dx, dy]: readonly [number, number],
  most: number,
  margin: number,
): number {
  let a = 0;
  for (let step = 0; step < STEPS && a < most; step++) {
    const clear = away(x + a * dx, y + a * dy, most - a + margin) - margin;
    if (clear <= FINE) return Math.max(0, a);
    // Nothing is nearer than that, so that no way of this length can reach it.
    a += clear;
  }
  return a < most ? a : Infinity;
}

function lookedAt(
  guide: GuideLine,
  near: readonly Near[],
  reach: Reach,
  margin: number,
  around: number,
): Kept {
  const u: number[] = [];
  const left: number[] = [];
  const right: number[] = [];
  const covers: number[] = [];
  const nearest: number[] = [];
  const out = [0, 0, 0, 0];
  /** least way out to both hands, and which area that is */
  const look = (x: number, y: number, theta: number): void => {
    [out[0], out[1], out[2], out[3]] = [Infinity, Infinity, -1, -1];
    const normal = [Math.sin(theta), -Math.cos(theta)] as const;
    for (const one of near) {
      const distance = one.away(x, y, around);
      if (distance >= around) continue;
      if (distance <= margin) out[2] = one.index;
      const toLeft = wayOut(one, [x, y], normal, reach.left, margin);
      const toRight = wayOut(one, [x, y], [-normal[0], -normal[1]], reach.right, margin);
      if (Math.min(toLeft, toRight) < Math.min(out[0], out[1]) || distance <= margin) out[3] = one.index;
      out[0] = Math.min(out[0], toLeft);
      out[1] = Math.min(out[1], toRight);
    }
  };
  const last = guide.u.length - 1;
  for (let first = 0; first < last; ) {
    let end = first;
    while (end < last && guide.u[end + 1] > guide.u[end]) end++;
    const finder = frameFinder(guide, first, end);
    const [from, to] = [guide.u[first], guide.u[end]];
    const pieces = Math.max(1, Math.ceil((to - from) / STEP));
    for (let k = 0; k <= pieces; k++) {
      const at = from + ((to - from) * k) / pieces;
      finder.at(at);
      look(finder.frame[0], finder.frame[1], finder.frame[2]);
      u.push(at);
      left.push(out[0]);
      right.push(out[1]);
      covers.push(out[2]);
      nearest.push(out[3]);
    }
    if (end < last) {
      const outer = outsideCorner(guide, end, near, reach, margin);
      const least = guide.theta[end + 1] > guide.theta[end] ? left : right;
      least[least.length - 1] = Math.min(least[least.length - 1], outer);
    }
    first = end + 1;
  }
  return {
    u: Float64Array.from(u),
    left: Float64Array.from(left),
    right: Float64Array.from(right),
    covers: Int32Array.from(covers),
    nearest: Int32Array.from(nearest),
  };
}

/** What is left of the reach on the outer side of a corner, where arms fan out or meet in a mitre. */
function outsideCorner(
  guide: GuideLine,
  end: number,
  near: readonly Near[],
  reach: Reach,
  margin: number,
): number {
  const [a, b] = [guide.theta[end], guide.theta[end + 1]];
  // Rising theta turns to the right as drawn: the left hand is outside.
  const hand = b > a ? 1 : -1;
  const widest = hand === 1 ? reach.left : reach.right;
  const fan = Math.max(2, Math.ceil((Math.abs(b - a) * widest * LONGEST_MITRE) / STEP));
  const middle = (a + b) / 2;
  let least = Infinity;
  for (let k = 0; k <= fan; k++) {
    const theta = a + ((b - a) * k) / fan;
    const direction = [hand * Math.sin(theta), -hand * Math.cos(theta)] as const;
    // A mitre reaches further along the bisector than its sides do straight out.
    const longer = Math.min(LONGEST_MITRE, Math.cos(theta - middle) / Math.cos((b - a) / 2));
    for (const one of near) {
      const way = wayOut(one, [guide.x[end], guide.y[end]], direction, widest * longer, margin);
      least = Math.min(least, way / longer);
    }
  }
  return least;
}

/** What is found at a place counts as far along the line as thread from there may lie. */
function spreadOut(guide: GuideLine, raw: Kept, spread: Spread, widest: number): Kept {
  const { legs, figures, repeat } = spread;
  const over = Math.max(repeat * LEANING_REPEATS, widest);
  const leans = [
    ...guide.corners.map(({ u, turn }) => ({ u, by: widest * Math.tan(Math.min(1.05, Math.abs(turn) / 2)) })),
    ...(guide.closed ? [] : [0, guide.length].map((u) => ({ u, by: widest * LEAN }))),
  ];
  const along = (a: number, b: number) => {
    const apart = Math.abs(a - b);
    return guide.closed ? Math.min(apart, guide.length - apart) : apart;
  };
  const leaning = (u: number) =>
    leans.reduce((most, lean) => Math.max(most, lean.by * (1 - along(u, lean.u) / over)), 0);
  const n = raw.u.length;
  // The first and the last place of a ring are one, and places go on round it.
  const count = guide.closed ? n - 1 : n;
  const kept: Kept = {
    u: raw.u,
    left: raw.left.slice(),
    right: raw.right.slice(),
    covers: raw.covers.slice(),
    nearest: raw.nearest.slice(),
  };
  for (let i = 0; i < n; i++) {
    const within = Math.max(legs, figures) + leaning(raw.u[i]);
    for (const way of [-1, 1]) {
      for (let step = 1; step < count; step++) {
        const at = i + way * step;
        if (!guide.closed && (at < 0 || at >= n)) break;
        const k = (at + count) % count;
        const apart = along(raw.u[k], raw.u[i]);
        if (apart > within) break;
        // The line itself is covered where it is: what lies beside that is cut off there.
        if (raw.covers[k] >= 0) {
          if (apart <= figures && kept.covers[i] < 0) kept.covers[i] = raw.covers[k];
          continue;
        }
        kept.left[i] = Math.min(kept.left[i], raw.left[k]);
        kept.right[i] = Math.min(kept.right[i], raw.right[k]);
        if (kept.nearest[i] < 0) kept.nearest[i] = raw.nearest[k];
      }
    }
  }
  return kept;
}
