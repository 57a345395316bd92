import Flatbush from 'flatbush';
import { type GuideLine, isStraight } from '../geometry/guide-line.js';
import { type Band, evenBand, type Reach } from './band.js';
import type { Beside } from './neighbors.js';

/** Of the largest clear disc, the share a treatment may fill: arc length at that offset is still 0.4 of the line's. */
export const SHARE_OF_DISC = 0.6;
/** Reach changes at most this much per mm along the line, so arms shorten gradually into a tight place. */
const STEEPEST = 0.25;
/** Points nearer than this along the line are left to its bend, mm. */
const NEAREST = 0.1;
/** A few places to either side are looked at first, each further by this factor: in a tight place they say nearly all. */
const FURTHER = 1.3;
/** Places looked at are this far apart, as a share of the reach wanted. */
const SAMPLE_SHARE = 0.2;
/** In a tight bend they are this far apart at most, mm: reach changes by a quarter of that between them. */
const FINE_STEP = 0.1;
/** Bends that differ by less than this share are one. */
const SAME_BEND = 0.1;

/** Radius of the largest disc on each side of a line that holds no other point of it; null for a straight line. */
export interface Room {
  readonly u: Float64Array;
  readonly left: Float64Array;
  readonly right: Float64Array;
  readonly closed: boolean;
}

/**
 * The room beside a line, looked at as far as a treatment of reach `widest` needs. On side n at P the largest disc that
 * holds no other point of the line has radius rho = min over Q of |d|^2 / (2 d.n), d = Q - P, d.n > 0. A corner's two
 * sides do not limit each other here: the turn of a corner shares that space (see lay.ts).
 *
 * Cost: places times points within two disc radii of them, 3.3 reaches at most; a straight line costs nothing.
 */
export function roomAlong(guide: GuideLine, widest: number, gap: number): Room | null {
  if (widest <= 0 || isStraight(guide)) return null;
  const places = sampled(guide, Math.max(0.25, widest * SAMPLE_SHARE), SHARE_OF_DISC / widest);
  const around = (2 * widest) / SHARE_OF_DISC + gap;
  return { u: places.u, ...clearDiscs(places, around, comesBack(guide)), closed: guide.closed };
}

/**
 * How far a treatment can reach in that room without folding over itself: within 0.6 rho (so 1 - k v >= 0.4 and nothing
 * folds) and rho - gap / 2 (so hairpins stay apart), changing at most 1 in 4.
 */
export function bandIn(room: Room | null, guide: GuideLine, wanted: Reach, gap: number): Band {
  if (!room) return evenBand(guide, wanted);
  const limit = (reach: number, rho: number) =>
    Math.max(0, Math.min(reach, SHARE_OF_DISC * rho, rho - gap / 2));
  const left = room.left.map((rho) => limit(wanted.left, rho));
  const right = room.right.map((rho) => limit(wanted.right, rho));
  level(room.u, left, room.closed);
  level(room.u, right, room.closed);
  return { u: room.u, left, right };
}

/** How far a treatment can reach beside its neighbors, changing at most 1 in 4. */
export function bandBeside(beside: Beside, guide: GuideLine, wanted: Reach): Band {
  const left = beside.left.map((most) => Math.min(wanted.left, most));
  const right = beside.right.map((most) => Math.min(wanted.right, most));
  level(beside.u, left, guide.closed);
  level(beside.u, right, guide.closed);
  return { u: beside.u, left, right };
}

/** Whether the line anywhere turns by more than a right angle from where it was heading, so that it may come back. */
function comesBack(guide: GuideLine): boolean {
  let least = Infinity;
  let most = -Infinity;
  for (const theta of guide.theta) {
    least = Math.min(least, theta);
    most = Math.max(most, theta);
  }
  return most - least > Math.PI / 2;
}

interface Places {
  readonly u: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly theta: Float64Array;
  /** radius of the line's own bend, where it bends to that hand; else Infinity */
  readonly left: Float64Array;
  readonly right: Float64Array;
  /** stretch between corners that the place is on */
  readonly stretch: Int32Array;
  readonly stretches: number;
  readonly closed: boolean;
}

/** Places a step apart; in bends so tight that they limit the reach by themselves closer, and where such a bend changes. */
function sampled(guide: GuideLine, step: number, tightest: number): Places {
  const us: number[] = [];
  const ks: number[] = [];
  const stretch: number[] = [];
  let part = 0;
  let keptBend = 0;
  for (let k = 0; k + 1 < guide.u.length; k++) {
    const width = guide.u[k + 1] - guide.u[k];
    if (width === 0) {
      part++;
      continue;
    }
    const cornerAhead = k + 2 < guide.u.length && guide.u[k + 2] === guide.u[k + 1];
    const bend = (guide.theta[k + 1] - guide.theta[k]) / width;
    const tighter = Math.max(Math.abs(bend), Math.abs(keptBend));
    const apart = tighter > tightest ? Math.min(step, FINE_STEP) : step;
    const changes = tighter > tightest && Math.abs(bend - keptBend) > SAME_BEND * tighter;
    const pieces = Math.max(1, Math.ceil(width / step));
    for (let j = 0; j < pieces; j++) {
      const u = guide.u[k] + (width * j) / pieces;
      const fresh = us.length === 0 || stretch[stretch.length - 1] !== part;
      // Samples of an arc lie closer than the step: keep those that are a step from the last kept one.
      if (fresh || (changes && j === 0) || u - us[us.length - 1] >= apart * 0.999) {
        us.push(u);
        ks.push(k);
        stretch.push(part);
        keptBend = bend;
      }
    }
    if (cornerAhead || k + 2 === guide.u.length) {
      us.push(guide.u[k + 1]);
      ks.push(k);
      stretch.push(part);
    }
  }
  const n = us.length;
  const places = {
    u: Float64Array.from(us),
    x: new Float64Array(n),
    y: new Float64Array(n),
    theta: new Float64Array(n),
    left: new Float64Array(n).fill(Infinity),
    right: new Float64Array(n).fill(Infinity),
    stretch: Int32Array.from(stretch),
    stretches: part + 1,
    closed: guide.closed,
  };
  for (let i = 0; i < n; i++) {
    const k = ks[i];
    const width = guide.u[k + 1] - guide.u[k];
    const t = (us[i] - guide.u[k]) / width;
    places.x[i] = guide.x[k] + t * (guide.x[k + 1] - guide.x[k]);
    places.y[i] = guide.y[k] + t * (guide.y[k + 1] - guide.y[k]);
    places.theta[i] = guide.theta[k] + t * (guide.theta[k + 1] - guide.theta[k]);
    // A place on a sample has the bends on both sides of it.
    for (let j = t === 0 && k > 0 && guide.u[k - 1] < guide.u[k] ? k - 1 : k; j <= k; j++) {
      const radius = (guide.u[j + 1] - guide.u[j]) / (guide.theta[j + 1] - guide.theta[j]);
      // Rising theta bends to the right (y down).
      if (radius > 0) places.right[i] = Math.min(places.right[i], radius);
      else places.left[i] = Math.min(places.left[i], -radius);
    }
  }
  return places;
}

function clearDiscs(places: Places, around: number, comesBack: boolean) {
  const n = places.u.length;
  // Places stand apart; what lies between them is known by the bend itself.
  const left = places.left.slice();
  const right = places.right.slice();
  const see = (i: number, q: number, nx: number, ny: number) => {
    const dx = places.x[q] - places.x[i];
    const dy = places.y[q] - places.y[i];
    const across = dx * nx + dy * ny;
    const square = dx * dx + dy * dy;
    // Nearer points say nothing that the bend does not say better, and rounding makes them say it wrong.
    if (square < NEAREST * NEAREST || Math.abs(across) <= 1e-9 * square) return;
    const rho = square / (2 * Math.abs(across));
    const side = across > 0 ? left : right;
    if (rho < side[i]) side[i] = rho;
  };
  const { u, x, y, stretch } = places;
  // a corner's two sides do not limit each other
  const isNextTo = (a: number, b: number) => {
    const apart = Math.abs(a - b);
    return apart === 1 || (places.closed && places.stretches > 2 && apart === places.stretches - 1);
  };
  const index = comesBack || places.closed ? pointIndex(places) : null;
  const seeAround = (i: number, box: number, nx: number, ny: number) => {
    if (index) {
      const near = index.search(x[i] - box, y[i] - box, x[i] + box, y[i] + box);
      for (let k = 0; k < near.length; k++) {
        if (!isNextTo(stretch[i], stretch[near[k]])) see(i, near[k], nx, ny);
      }
      return;
    }
    // Headings within a right angle take a line at least its way over the root of 2 from where it was, and a corner of the box is
    // the root of 2 times its half side away: what lies in it is at most twice that half side along the line.
    for (let sense = -1; sense <= 1; sense += 2) {
      for (let q = i + sense; stretch[q] === stretch[i] && Math.abs(u[q] - u[i]) <= 2 * box; q += sense) {
        if (Math.abs(x[q] - x[i]) <= box && Math.abs(y[q] - y[i]) <= box) see(i, q, nx, ny);
      }
    }
  };
  for (let i = 0; i < n; i++) {
    const nx = Math.sin(places.theta[i]);
    const ny = -Math.cos(places.theta[i]);
    for (let away = 1; away < n; away = Math.ceil(away * FURTHER)) {
      if (i >= away && stretch[i - away] === stretch[i]) see(i, i - away, nx, ny);
      if (i + away < n && stretch[i + away] === stretch[i]) see(i, i + away, nx, ny);
    }
    // A disc through a point d away has a radius of d / 2 at least: points further than that say nothing new.
    const box = Math.min(around, 2 * Math.max(left[i], right[i]));
    seeAround(i, box, nx, ny);
  }
  return { left, right };
}

function pointIndex(places: Places): Flatbush {
  const index = new Flatbush(places.u.length);
  for (let i = 0; i < places.u.length; i++) {
    index.add(places.x[i], places.y[i], places.x[i], places.y[i]);
  }
  index.finish();
  return index;
}

/** Lowers values so that they change at most STEEPEST per mm; on a closed line across its start, too. */
export function level(u: Float64Array, values: Float64Array, closed: boolean): void {
  const n = values.length;
  for (let pass = 0; pass < (closed ? 2 : 1); pass++) {
    if (closed) {
      const both = Math.min(values[0], values[n - 1]);
      values[0] = both;
      values[n - 1] = both;
    }
    for (let i = 1; i < n; i++) {
      values[i] = Math.min(values[i], values[i - 1] + STEEPEST * (u[i] - u[i - 1]));
    }
    for (let i = n - 2; i >= 0; i--) {
      values[i] = Math.min(values[i], values[i + 1] + STEEPEST * (u[i + 1] - u[i]));
    }
  }
}
