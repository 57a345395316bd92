import { frameFinder, sampleBefore } from '../geometry/guide-frame.js';
import type { Corner, GuideLine } from '../geometry/guide-line.js';
import type { Points } from '../geometry/polyline.js';
import { type Band, type Reach, reachAt } from './band.js';
import { type Bound, type Cut, onCloth } from './cloth.js';
import type { WedgeSide } from './ends.js';
import { LONGEST_MITRE } from './mitre.js';
import type { Span, SpanEnd } from './spans.js';

/** Places looked at across an end that is cut to the cloth. */
const ACROSS = 8;
/** An end is looked for on the cloth to this, mm. */
const FINE = 1e-3;
/** It is looked for inward in steps of this, mm. */
const STEP = 1;

/** A place of a band's edge in the frame of its line. */
type UV = readonly [number, number];

type ReachAlong = (u: number) => Reach;
type IsOnCloth = ((place: UV) => boolean) | null;

/** A part of a span between the corners that it turns. */
interface Side {
  readonly from: number;
  readonly to: number;
  /** samples of the guide line, without corners inside */
  readonly first: number;
  readonly last: number;
}

/** What a treatment claims on one span before any thread is laid. */
export interface Claim {
  readonly guide: GuideLine;
  readonly band: Band;
  readonly span: Span;
  /** the parts of the line that are worked at all, from and to in its u; the whole span where null */
  readonly worked: readonly { readonly from: number; readonly to: number }[] | null;
}

/**
 * The cloth that a treatment claims: its reach to both hands, its ends as they are
 * set back, slanted, drawn into the point of a wedge or cut to the cloth. One polygon for each side between corners that
 * are turned, which meet on the bisectors; a ring without corners in two halves. Polygons repeat their first point.
 */
export function claimedCloth({ guide, band, span, worked }: Claim, cut: (bound: Bound) => Cut): Points[] {
  const isWorked = (from: number, to: number) =>
    worked?.some((one) => one.from < to && one.to > from) ?? true;
  const bounds = span.ring ? [] : [span.start.bound, span.end.bound];
  const cuts = bounds.flatMap((bound) => (bound ? [cut(bound)] : []));
  const sides = sidesOf(guide, span);
  const cloth = onCloth(cuts);
  const starts = span.ring ? -Infinity : span.start.at + span.start.setback;
  const ends = span.ring ? Infinity : span.end.at - span.end.setback;
  return sides.flatMap((side, i) => {
    // What an end is set back by may reach past the nearest corner.
    if (side.to <= starts || side.from >= ends || !isWorked(side.from, side.to)) return [];
    const finder = frameFinder(guide, side.first, side.last);
    const onPage = ([u, v]: UV): [number, number] => {
      finder.at(u);
      const [x, y, theta] = finder.frame;
      return [x + v * Math.sin(theta), y - v * Math.cos(theta)];
    };
    const reach = (u: number) => drawnIn(band, span, Math.min(side.to, Math.max(side.from, u)));
    const isOn = (place: UV) => cloth(...onPage(place));
    const isFirst = i === 0 && !span.ring;
    const isLast = i === sides.length - 1 && !span.ring;
    const start = isFirst
      ? endEdge(span.start, 1, side, reach, cuts.length > 0 ? isOn : null)
      : cornerEdge(turnAt(guide, side.from), 1, side.from, side.to - side.from, reach);
    const end = isLast
      ? endEdge(span.end, -1, side, reach, cuts.length > 0 ? isOn : null)
      : cornerEdge(turnAt(guide, side.to), -1, side.to, side.to - side.from, reach);
    const us = placesAlong(guide, band, span, side);
    const edge = (hand: 'left' | 'right', from: UV, to: UV) =>
      us
        .filter((u) => u > from[0] && u < to[0])
        .map((u): UV => [u, (hand === 'left' ? 1 : -1) * reach(u)[hand]]);
    // Edges across run from the right hand to the left.
    const around: UV[] = [
      ...start,
      ...edge('left', start[start.length - 1], end[end.length - 1]),
      ...[...end].reverse(),
      ...edge('right', start[0], end[0]).reverse(),
      start[0],
    ];
    return [Float64Array.from(around.flatMap(onPage))];
  });
}

function sidesOf(guide: GuideLine, span: Span): Side[] {
  const last = guide.u.length - 1;
  const split = (u: number) => {
    const k = sampleBefore(guide.u, u + 1e-6) - 1;
    return k >= 0 && guide.u[k] === guide.u[k + 1] && guide.u[k] > u - 1e-6 ? k : -1;
  };
  const breaks = span.corners.map(({ u }) => ({ u, at: split(u) }));
  if (span.ring && breaks.length === 0) {
    const half = guide.length / 2;
    return [
      { from: 0, to: half, first: 0, last },
      { from: half, to: guide.length, first: 0, last },
    ];
  }
  const before = split(span.start.at);
  const after = split(span.end.at);
  const firsts = [before >= 0 ? before + 1 : 0, ...breaks.map(({ at }) => at + 1)];
  const lasts = [...breaks.map(({ at }) => at), after >= 0 ? after : last];
  const bounds = [span.start.at, ...breaks.map(({ u }) => u), span.end.at];
  return firsts.map((first, i) => ({ from: bounds[i], to: bounds[i + 1], first, last: lasts[i] }));
}

/** The turn at a place of a line; the start of a ring is also its end. */
function turnAt(guide: GuideLine, u: number): number {
  const isThere = (corner: Corner) =>
    Math.abs(corner.u - u) < 1e-6 || (guide.closed && corner.u === 0 && Math.abs(guide.length - u) < 1e-6);
  return guide.corners.find(isThere)?.turn ?? 0;
}

/** Both sides of a corner meet on its bisector; the outer point is capped. */
function cornerEdge(turn: number, sense: 1 | -1, at: number, length: number, reach: ReachAlong): UV[] {
  const { left, right } = reach(at);
  const slope = Math.tan(turn / 2);
  const within = slope === 0 ? Infinity : length / 2 / Math.abs(slope);
  const capped = Math.min(1, LONGEST_MITRE * Math.cos(turn / 2));
  const onLeft = turn > 0 ? Math.min(left, within) : left * capped;
  const onRight = turn > 0 ? right * capped : Math.min(right, within);
  return [
    [at - sense * slope * onRight, -onRight],
    [at, 0],
    [at + sense * slope * onLeft, onLeft],
  ];
}

/** An end of the span: as far as the cloth goes where thread is cut to it, else set back, leaning as the line it ends on. */
function endEdge(end: SpanEnd, sense: 1 | -1, side: Side, reach: ReachAlong, onCloth: IsOnCloth): UV[] {
  const base = end.at + sense * end.setback;
  const { left, right } = reach(base);
  const most = (side.to - side.from) / 2 + left + right;
  return Array.from({ length: ACROSS + 1 }, (_, k): UV => {
    const v = -right + ((left + right) * k) / ACROSS;
    if (!end.bound || !onCloth) return [base - sense * Math.max(0, -v * end.slope), v];
    const way = onCloth([base, v]) ? -sense : sense;
    let [near, far] = [base, base];
    while (Math.abs(far - base) < most) {
      near = far;
      far += way * STEP;
      if (onCloth([far, v]) !== (way === -sense)) break;
    }
    let [on, off] = way === -sense ? [near, far] : [far, near];
    while (Math.abs(on - off) > FINE) {
      const between = (on + off) / 2;
      if (onCloth([between, v])) on = between;
      else off = between;
    }
    return [on, v];
  });
}

/** The band's reach, in the point of a wedge no more than there is room. */
function drawnIn(band: Band, { start, end }: Span, u: number): Reach {
  const room = ({ slope, inset }: WedgeSide, away: number) =>
    slope === Infinity ? Infinity : Math.max(0, away * slope - inset);
  const { left, right } = reachAt(band, u);
  return {
    left: Math.min(
      left,
      start.taper ? room(start.taper.left, u - start.at) : Infinity,
      end.taper ? room(end.taper.left, end.at - u) : Infinity,
    ),
    right: Math.min(
      right,
      start.taper ? room(start.taper.right, u - start.at) : Infinity,
      end.taper ? room(end.taper.right, end.at - u) : Infinity,
    ),
  };
}

/** Where the edges of a band may bend, ascending: samples of the line and of the reach, and where a wedge leaves room. */
function placesAlong(
  guide: GuideLine,
  band: Band,
  { start, end }: Span,
  { from, to, first, last }: Side,
): number[] {
  const us = new Set<number>([from, to]);
  for (let k = first; k <= last; k++) us.add(guide.u[k]);
  for (const u of band.u) us.add(u);
  const knees = (point: SpanEnd, sense: 1 | -1) => {
    if (!point.taper) return;
    const { left, right } = reachAt(band, point.at);
    for (const [{ slope, inset }, reach] of [
      [point.taper.left, left],
      [point.taper.right, right],
    ] as const) {
      if (slope !== Infinity) us.add(point.at + (sense * (reach + inset)) / slope);
    }
  };
  knees(start, 1);
  knees(end, -1);
  return [...us].filter((u) => u >= from && u <= to).sort((a, b) => a - b);
}
