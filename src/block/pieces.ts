import { wrapAngle } from '../geometry/point.js';
import { cumulativeLength, type Points, pointCount, polylineLength, reversed } from '../geometry/polyline.js';
import { partOf } from '../geometry/polyline-part.js';
import { ringFrom } from '../geometry/ring.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import type { DrawnLine } from './drawn-line.js';

/** A stretch of a drawn line between sharp turns, on its way into the network. */
export interface LinePiece {
  /** a ring (a closed line without sharp turns) repeats its first point */
  readonly points: Points;
  /** index of the drawn line it belongs to */
  readonly line: number;
}

/** Turns sharper than this are places where lines are meant to meet, and move like ends. */
const MEETING_TURN = Math.PI / 4;
/** A turn this sharp is a line that goes back along itself. */
const REVERSAL = (150 * Math.PI) / 180;

export const isRing = (points: Points): boolean =>
  pointCount(points) > 2 &&
  points[0] === points[points.length - 2] &&
  points[1] === points[points.length - 1];

/**
 * Drawn lines cut at their sharp turns, in an order that knows nothing of the order or direction of drawing: longest
 * first, then by place. Lines no longer than the tolerance are left out and named.
 */
export function cutIntoPieces(
  lines: readonly DrawnLine[],
  snap: number,
): { readonly pieces: LinePiece[]; readonly tooShort: number[] } {
  const pieces: LinePiece[] = [];
  const tooShort: number[] = [];
  lines.forEach((drawn, line) => {
    const points = inOneDirection(withoutRepeats(drawn.points, drawn.closed));
    if (pointCount(points) < 2 || polylineLength(points) <= snap) tooShort.push(line);
    else for (const part of atSharpTurns(points, 4 * snap)) pieces.push({ points: part, line });
  });
  return { pieces: longestFirst(pieces), tooShort };
}

function withoutRepeats(points: Points, closed: boolean): Points {
  const kept: number[] = [];
  const n = pointCount(points);
  for (let i = 0; i < n; i++) {
    const x = points[2 * i];
    const y = points[2 * i + 1];
    const m = kept.length;
    if (m && Math.hypot(x - kept[m - 2], y - kept[m - 1]) <= SAME_POINT) continue;
    kept.push(x, y);
  }
  const m = kept.length;
  if (closed && m > 4) {
    if (Math.hypot(kept[0] - kept[m - 2], kept[1] - kept[m - 1]) <= SAME_POINT) kept.length -= 2;
    kept.push(kept[0], kept[1]);
  }
  return Float64Array.from(kept);
}

/** Rings from their topmost point to the right hand, open lines from their upper end: the same for either drawing. */
function inOneDirection(points: Points): Points {
  if (points.length < 4) return points;
  if (!isRing(points)) return comparePlace(points, reversed(points)) <= 0 ? points : reversed(points);
  let top = 0;
  for (let i = 1; i + 1 < pointCount(points); i++) {
    const dy = points[2 * i + 1] - points[2 * top + 1];
    const dx = points[2 * i] - points[2 * top];
    if (dy < 0 || (dy === 0 && dx < 0)) top = i;
  }
  const ring = ringFrom(points, [], cumulativeLength(points)[top]).points;
  const back = reversed(ring);
  return comparePlace(ring, back) <= 0 ? ring : back;
}

function comparePlace(a: Points, b: Points): number {
  for (let i = 0; i < Math.min(a.length, b.length); i += 2) {
    if (a[i + 1] !== b[i + 1]) return a[i + 1] - b[i + 1];
    if (a[i] !== b[i]) return a[i] - b[i];
  }
  return a.length - b.length;
}

/**
 * A line cut at its reversals, and at its sharp turns where these stand apart. Steps closer than `apart` stay in one
 * piece, so that a finely stepped line cannot collapse when its ends are drawn together.
 */
function atSharpTurns(points: Points, apart: number): Points[] {
  const at = cumulativeLength(points);
  const n = pointCount(points);
  const length = at[n - 1];
  const ring = isRing(points);
  const sharp: { readonly u: number; readonly turn: number }[] = [];
  const heading = (i: number) =>
    Math.atan2(points[2 * i + 3] - points[2 * i + 1], points[2 * i + 2] - points[2 * i]);
  for (let i = ring ? 0 : 1; i < n - 1; i++) {
    const turn = Math.abs(wrapAngle(heading(i) - heading(i > 0 ? i - 1 : n - 2)));
    if (turn > MEETING_TURN) sharp.push({ u: at[i], turn });
  }
  const cuts = sharp
    .filter(({ u, turn }, i) => {
      if (turn > REVERSAL) return true;
      const before =
        i > 0 ? sharp[i - 1].u : ring && sharp.length > 1 ? sharp[sharp.length - 1].u - length : -u;
      const after =
        i + 1 < sharp.length ? sharp[i + 1].u : ring && sharp.length > 1 ? sharp[0].u + length : length;
      if (ring && sharp.length === 1) return true;
      return u - (i > 0 || ring ? before : 0) > apart && after - u > apart;
    })
    .map(({ u }) => u);
  if (!cuts.length) return [points];
  if (!ring) return parts(points, at, [0, ...cuts, length]);
  const turned = ringFrom(points, [], cuts[0]).points;
  return parts(turned, cumulativeLength(turned), [...cuts.map((u) => u - cuts[0]), length]);
}

const parts = (points: Points, at: Float64Array, cuts: readonly number[]): Points[] =>
  cuts.slice(1).map((to, i) => partOf(points, at, cuts[i], to));

/** Longest first; equal ones (to the nanometer) by place. */
export function longestFirst(pieces: readonly LinePiece[]): LinePiece[] {
  return pieces
    .map((piece) => ({ piece, size: Math.round(polylineLength(piece.points) * 1e6) }))
    .sort((a, b) => b.size - a.size || comparePlace(a.piece.points, b.piece.points))
    .map(({ piece }) => piece);
}
