import type { Outline, Seam, SeamEnd } from '../block/seam-map.js';
import { findCorners } from '../geometry/corners.js';
import { type FrameFinder, frameFinder, sampleBefore } from '../geometry/guide-frame.js';
import { guideFromLine } from '../geometry/guide-from-line.js';
import type { Corner, GuideLine } from '../geometry/guide-line.js';
import { nearestOnSegment } from '../geometry/nearest.js';
import { cumulativeLength, type Points, pointAt, polylineLength, reversed } from '../geometry/polyline.js';
import { ringFrom } from '../geometry/ring.js';
import { roundedCorners } from '../geometry/rounded-corners.js';
import { CORNER_TURN, SAME_POINT } from '../geometry/tolerances.js';

/**
 * A seam (or the outline) as a treatment walks it: from either end, or round a ring from a place that suits. `u` of the
 * walk and of the seam are turned into each other by `toSeam` and `fromSeam`.
 */
export interface Walk {
  readonly seam: number | 'outline';
  readonly guide: GuideLine;
  readonly closed: boolean;
  readonly reverse: boolean;
  readonly ends: readonly [SeamEnd, SeamEnd] | null;
  /** junctions inside, ascending by the walk's u */
  readonly crossings: readonly { readonly u: number; readonly junction: number }[];
  /** length of the seam's own polyline, which may differ from the eased guide line's by a hair */
  readonly seamLength: number;
  /** u of the seam where the walk starts */
  readonly start: number;
}

export function toSeam(walk: Walk, u: number): number {
  const scaled = (u * walk.seamLength) / walk.guide.length;
  if (walk.reverse) return walk.closed ? mod(walk.start - scaled, walk.seamLength) : walk.seamLength - scaled;
  return walk.closed ? mod(walk.start + scaled, walk.seamLength) : scaled;
}

export function fromSeam(walk: Walk, u: number): number {
  const along = walk.reverse
    ? walk.closed
      ? mod(walk.start - u, walk.seamLength)
      : walk.seamLength - u
    : walk.closed
      ? mod(u - walk.start, walk.seamLength)
      : u;
  return (along * walk.guide.length) / walk.seamLength;
}

/** The corners and slight kinks that a treatment goes round, and how wide. */
export interface Rounding {
  /** mm, for one that turns so much, radians, positive to the left */
  readonly radius: (turn: number) => number;
  /** @param side to the nearer of its neighbors, a corner or where an end may set repeats back, mm */
  readonly isRounded: (turn: number, side: number) => boolean;
  /** what an end of an open line may take of it, mm */
  readonly atEnds: number;
}

/**
 * @param start on a ring, u of the seam to start from
 * @param at position of each junction, to find it on the eased line
 */
export function walkSeam(
  seam: Seam,
  reverse: boolean,
  start: number,
  at: (junction: number) => readonly [number, number],
  rounding: Rounding | null = null,
): Walk {
  const line = rounded(lineOf(seam.points, seam.corners, seam.closed, reverse, start), seam.closed, rounding);
  const guide = guideFromLine(line.points, line.corners, seam.closed);
  const walk: Walk = {
    seam: seam.id,
    guide,
    closed: seam.closed,
    reverse,
    ends: seam.ends && (reverse ? [seam.ends[1], seam.ends[0]] : seam.ends),
    crossings: [],
    seamLength: polylineLength(seam.points),
    start: seam.closed ? start : reverse ? polylineLength(seam.points) : 0,
  };
  // One finder for all: crossings stand in order, so that it walks the line but once or twice.
  const finder = frameFinder(guide, 0, guide.u.length - 1);
  const crossings = seam.crossings
    .map(({ u, junction }) => ({
      u: nearestU(guide, finder, fromSeam(walk, u), at(junction), walk.seamLength - guide.length),
      junction,
    }))
    .sort((a, b) => a.u - b.u);
  return { ...walk, crossings };
}

export function walkOutline(outline: Outline, start: number, rounding: Rounding | null = null): Walk {
  const line = rounded(lineOf(outline.points, outline.corners, true, false, start), true, rounding);
  return {
    seam: 'outline',
    guide: guideFromLine(line.points, line.corners, true),
    closed: true,
    reverse: false,
    ends: null,
    crossings: [],
    seamLength: polylineLength(outline.points),
    start,
  };
}

interface Line {
  readonly points: Points;
  readonly corners: readonly Corner[];
}

function rounded(line: Line, closed: boolean, rounding: Rounding | null): Line {
  if (!rounding) return line;
  const bends = [...line.corners, ...kinksOf(line, closed)].sort((a, b) => a.u - b.u);
  if (bends.length === 0) return line;
  const before = cumulativeLength(line.points);
  const length = before[before.length - 1];
  const sideOf = (k: number) => {
    const from = bends[k - 1]?.u ?? (closed ? bends[bends.length - 1].u - length : rounding.atEnds);
    const to = bends[k + 1]?.u ?? (closed ? bends[0].u + length : length - rounding.atEnds);
    return Math.min(bends[k].u - from, to - bends[k].u);
  };
  const round = bends.filter(({ turn }, k) => rounding.isRounded(turn, sideOf(k)));
  if (round.length === 0) return line;
  const sharp = line.corners.filter((corner) => !round.includes(corner));
  const points = roundedCorners(line.points, round, closed, rounding.radius, sharp);
  const after = cumulativeLength(points);
  // A corner that stays keeps its point, and corners their order: one sweep finds them on the shorter line.
  let i = 0;
  let k = 0;
  const corners = sharp.flatMap(({ u, turn }): Corner[] => {
    while (i + 1 < before.length && before[i] < u - 1e-9) i++;
    const [x, y] = pointAt(line.points, i);
    for (let j = k; j < after.length; j++) {
      if (Math.hypot(points[2 * j] - x, points[2 * j + 1] - y) > SAME_POINT) continue;
      k = j;
      return [{ u: after[j], turn }];
    }
    return [];
  });
  return { points, corners };
}

/** A single turn below this is eased well enough with the rest of the line, radians. */
const SLIGHTEST_KINK = (8 * Math.PI) / 180;

/** Vertices that stand out of the line as corners do, but turn less. */
const kinksOf = ({ points, corners }: Line, closed: boolean): Corner[] =>
  findCorners(points, closed, SLIGHTEST_KINK).filter(
    ({ u, turn }) =>
      Math.abs(turn) <= CORNER_TURN && corners.every((corner) => Math.abs(corner.u - u) > SAME_POINT),
  );

function lineOf(
  points: Points,
  corners: readonly Corner[],
  closed: boolean,
  reverse: boolean,
  start: number,
): Line {
  const ring = closed && start > 0 ? ringFrom(points, corners, start) : { points, corners };
  if (!reverse) return ring;
  const length = polylineLength(ring.points);
  return {
    points: reversed(ring.points),
    corners: ring.corners
      .map(({ u, turn }) => ({ u: closed && u === 0 ? 0 : length - u, turn: -turn }))
      .sort((a, b) => a.u - b.u),
  };
}

/** How far from its expected place a junction is looked for on the eased line, mm, beside what easing made it shorter. */
const LOOK = 3;

/** u of the guide line nearest to a point, near the place it is expected at. */
function nearestU(
  guide: GuideLine,
  finder: FrameFinder,
  expected: number,
  at: readonly [number, number],
  shorter: number,
): number {
  let best = expected;
  const look = LOOK + Math.abs(shorter);
  finder.at(expected);
  let least = Math.hypot(finder.frame[0] - at[0], finder.frame[1] - at[1]);
  for (let i = sampleBefore(guide.u, expected - look); i + 1 < guide.u.length; i++) {
    if (guide.u[i] > expected + look) break;
    if (guide.u[i + 1] === guide.u[i]) continue;
    const a = [guide.x[i], guide.y[i]] as const;
    const { t, distance } = nearestOnSegment(at, a, [guide.x[i + 1], guide.y[i + 1]]);
    if (distance < least - 1e-12) {
      least = distance;
      best = guide.u[i] + t * (guide.u[i + 1] - guide.u[i]);
    }
  }
  return best;
}

const mod = (value: number, by: number): number => ((value % by) + by) % by;

/** The place on a walk's guide line at u. */
export function placeAt(walk: Walk, u: number): [number, number] {
  const finder = frameFinder(walk.guide, 0, walk.guide.u.length - 1);
  finder.at(u);
  return [finder.frame[0], finder.frame[1]];
}
