import { frameFinder } from '../geometry/guide-frame.js';
import type { GuideLine } from '../geometry/guide-line.js';
import type { Band, Reach } from './band.js';
import type { Taper } from './ends.js';
import type { Crest } from './waves.js';

/**
 * How a slanting boundary is shared out over the repeat beside it: at distance d < length from the boundary a point at
 * v moves along by v * slope * (1 - d / length). At a corner of turn tau the slope is tan(tau / 2) and both sides meet
 * on the bisector; at a slanting end it is the slant of the line ended on. `left` and `right` scale v at the boundary
 * (inner reach narrowed, outer mitre capped), fading out over the same length.
 */
export interface Mitre {
  readonly slope: number;
  readonly length: number;
  readonly left: number;
  readonly right: number;
  /** scale of v further away, under 1 on the inner side of a corner whose sides are shorter than the reach needs */
  readonly leftAway: number;
  readonly rightAway: number;
}

/** A part of a guide line without corners inside; `first` to `last` are its samples. */
export interface Part {
  readonly from: number;
  readonly to: number;
  readonly first: number;
  readonly last: number;
  readonly start: Mitre | null;
  readonly end: Mitre | null;
  readonly startPoint: Point | null;
  readonly endPoint: Point | null;
}

/**
 * The point of a wedge that a line runs into: at distance d from it v reaches at most d * slope - inset, and is scaled
 * down to that. `at` is the junction's u.
 */
export interface Point extends Taper {
  readonly at: number;
}

export interface Laying {
  readonly guide: GuideLine;
  readonly parts: readonly Part[];
  readonly band: Band;
  /** reach the units were built for; where the band is narrower, v is scaled down */
  readonly built: Reach;
  /** u is taken modulo the guide's length */
  readonly closed: boolean;
  /** distance of the row's line from the guide line, positive left */
  readonly offset: number;
  /** what the guide line is drawn along: its x is that line's u and its y that line's -v; on the cloth when not given */
  readonly on?: Laying;
  /** tops of a guide line that is drawn along another */
  readonly crests?: readonly Crest[];
}

/** Lays points of the (u, v) frame on the cloth. `at` writes x, y, theta and the local scale into `out`. */
export interface Layer {
  readonly out: Float64Array;
  at(u: number, v: number): void;
  /** whether what is laid from one u to another is only moved along the line, neither bent, leant nor narrowed */
  isPlain(from: number, to: number): boolean;
  /** whether a part runs into the point of a wedge, so that figures are to be drawn in */
  readonly wedged: boolean;
  /**
   * How far in all of a figure is drawn whose outermost points to both hands are these (u v u v ...), until this is called
   * again: as much as they must be in the point of a wedge. Drawn in point by point, its curves would hook.
   */
  drawIn(outermost: readonly number[]): void;
}

export function layer(laying: Laying): Layer {
  const own = layerOf(laying);
  return laying.on ? drawnAlong(layer(laying.on), own) : own;
}

/** Lays what is worked on a line that is itself drawn along another: into that one's plane, and with it on the cloth. */
function drawnAlong(base: Layer, own: Layer): Layer {
  const out = new Float64Array(4);
  return {
    out,
    wedged: base.wedged,
    isPlain: () => false,
    drawIn(outermost) {
      const onBase: number[] = [];
      for (let i = 0; i < outermost.length; i += 2) {
        own.at(outermost[i], outermost[i + 1]);
        onBase.push(own.out[0], -own.out[1]);
      }
      base.drawIn(onBase);
    },
    at(u, v) {
      own.at(u, v);
      base.at(own.out[0], -own.out[1]);
      out[0] = base.out[0];
      out[1] = base.out[1];
      out[2] = base.out[2] + own.out[2];
      out[3] = base.out[3] * own.out[3];
    },
  };
}

function layerOf(laying: Laying): Layer {
  const { guide, parts, closed, offset, built } = laying;
  const finders = parts.map((part) => frameFinder(guide, part.first, part.last));
  const out = new Float64Array(4);
  const narrowing = narrowed(laying);
  let p = 0;
  const drawn = { left: 1, right: 1 };
  const inWedge = (point: Point, d: number, v: number): number => {
    const drawnIn = v > 0 ? drawn.left : v < 0 ? drawn.right : 1;
    return v === 0 ? inPoint(point, d, built) : Math.min(drawnIn, roomIn(point, d, v));
  };
  const { startPoint } = parts[0];
  const { endPoint } = parts[parts.length - 1];
  // Along a straight line, which most seams are, direction stays the same from point to point: it, its sine and cosine.
  const heading = Float64Array.of(Number.NaN, 0, 1);
  return {
    out,
    wedged: startPoint !== null || endPoint !== null,
    drawIn(outermost: readonly number[]): void {
      drawn.left = drawn.right = 1;
      for (let i = 0; i < outermost.length; i += 2) {
        const [u, v] = [outermost[i], outermost[i + 1]];
        const room = Math.min(
          startPoint ? roomIn(startPoint, u - startPoint.at, v) : 1,
          endPoint ? roomIn(endPoint, endPoint.at - u, v) : 1,
        );
        if (v > 0) drawn.left = Math.min(drawn.left, room);
        else drawn.right = Math.min(drawn.right, room);
      }
    },
    isPlain(from: number, to: number): boolean {
      if (narrowing || from < 0 || to > guide.length) return false;
      while (p > 0 && from < parts[p].from) p--;
      while (p + 1 < parts.length && from > parts[p].to) p++;
      const { start, end, startPoint, endPoint, ...part } = parts[p];
      if (startPoint && from - startPoint.at < fullFrom(startPoint, built)) return false;
      if (endPoint && endPoint.at - to < fullFrom(endPoint, built)) return false;
      return (
        from >= part.from + (start ? start.length : 0) &&
        to <= part.to - (end ? end.length : 0) &&
        finders[p].isStraight(from, to)
      );
    },
    at(uAsked: number, vAsked: number): void {
      let u = uAsked;
      if (closed) u = u < 0 ? u + guide.length : u > guide.length ? u - guide.length : u;
      while (p > 0 && u < parts[p].from) p--;
      while (p + 1 < parts.length && u > parts[p].to) p++;
      const part = parts[p];
      let scale = narrowing ? narrowing(u, vAsked) : 1;
      if (part.startPoint) scale *= inWedge(part.startPoint, u - part.startPoint.at, vAsked);
      if (part.endPoint) scale *= inWedge(part.endPoint, part.endPoint.at - u, vAsked);
      let across = vAsked * scale + offset;
      let along = u;
      if (part.start) {
        const near = Math.max(0, 1 - (u - part.from) / part.start.length);
        const share = shareAt(part.start, near, across);
        scale *= share;
        across *= share;
        along += across * part.start.slope * near;
      }
      if (part.end) {
        const near = Math.max(0, 1 - (part.to - u) / part.end.length);
        const share = shareAt(part.end, near, across);
        scale *= share;
        across *= share;
        along -= across * part.end.slope * near;
      }
      const finder = finders[p];
      finder.at(along);
      const theta = finder.frame[2];
      if (theta !== heading[0]) {
        heading[0] = theta;
        heading[1] = Math.sin(theta);
        heading[2] = Math.cos(theta);
      }
      out[0] = finder.frame[0] + across * heading[1];
      out[1] = finder.frame[1] - across * heading[2];
      out[2] = theta;
      out[3] = scale;
    },
  };
}

/** Share of v that a mitre leaves; on the line itself, where a figure may lie to either hand, the smaller one. */
function shareAt(mitre: Mitre, near: number, across: number): number {
  const left = mitre.leftAway + (mitre.left - mitre.leftAway) * near;
  const right = mitre.rightAway + (mitre.right - mitre.rightAway) * near;
  return across > 0 ? left : across < 0 ? right : Math.min(left, right);
}

/** Share of v that stays inside a wedge at distance d from its point. */
function roomIn(point: Point, d: number, v: number): number {
  const { slope, inset } = v > 0 ? point.left : point.right;
  if (slope === Infinity || v === 0) return 1;
  return Math.min(1, Math.max(0, d * slope - inset) / Math.abs(v));
}

/** The same for a whole figure that stands on the line and reaches as far as the stitch does, to either hand. */
const inPoint = (point: Point, d: number, { left, right }: Reach): number =>
  Math.min(roomIn(point, d, left), roomIn(point, d, -right));

/** Distance from the point of a wedge from which on the whole reach has room. */
function fullFrom({ left, right }: Point, built: Reach): number {
  const from = ({ slope, inset }: Point['left'], reach: number) =>
    slope === Infinity ? 0 : (reach + inset) / slope;
  return Math.max(from(left, built.left), from(right, built.right));
}

/**
 * Scale of v at u, or null where the band is nowhere narrower than what units are built for. A figure that stands on the
 * line itself may lie to either hand: it takes the smaller of both.
 */
function narrowed({ band, built }: Laying): ((u: number, v: number) => number) | null {
  if (isWhole(band.left, built.left) && isWhole(band.right, built.right)) return null;
  const share = (values: Float64Array, whole: number) =>
    values.map((value) => (whole > 0 ? Math.min(1, value / whole) : 1));
  const left = share(band.left, built.left);
  const right = share(band.right, built.right);
  const us = band.u;
  let i = 0;
  const both = left.map((share, k) => Math.min(share, right[k]));
  return (u, v) => {
    const values = v === 0 ? both : v > 0 ? left : right;
    while (i > 0 && us[i] > u) i--;
    while (i + 2 < us.length && us[i + 1] < u) i++;
    const width = us[i + 1] - us[i];
    const t = width > 0 ? Math.min(1, Math.max(0, (u - us[i]) / width)) : 0;
    return values[i] + t * (values[i + 1] - values[i]);
  };
}

/** Whether a band has room for a reach all along. */
function isWhole(band: Float64Array, reach: number): boolean {
  if (reach <= 0) return true;
  for (const width of band) if (width / reach <= 1 - 1e-9) return false;
  return true;
}
