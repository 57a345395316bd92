import { frameFinder } from '../geometry/guide-frame.js';
import type { GuideLine } from '../geometry/guide-line.js';
import type { Reach } from './band.js';

/** A step outward is never less than this, mm, and the search ends after MOST_STEPS: lines that run side by side. */
const LEAST_STEP = 0.02;
const MOST_STEPS = 200;
/** Places looked at across the front edge of a band. */
const ACROSS = 8;

/**
 * A setback found for straight arms, moved outward until the front edge of the band is clear of a through line that
 * may be curved, as the butting line may be. For straight arms it stays as it is.
 *
 * @param clear distance the front edge keeps from the through line: its reach plus the gap
 */
export function movedClear(
  own: GuideLine,
  through: GuideLine,
  at: number,
  sense: 1 | -1,
  setback: number,
  clear: number,
  reach: Reach,
): number {
  const finder = frameFinder(own, 0, own.u.length - 1);
  const near = nearSegments(
    through,
    own,
    at,
    finder,
    setback + clear + 2 * Math.max(reach.left, reach.right),
  );
  let s = setback;
  for (let step = 0; step < MOST_STEPS; step++) {
    finder.at(at + sense * s);
    const [x, y, theta] = finder.frame;
    let least = Infinity;
    for (let k = 0; k <= ACROSS; k++) {
      const v = -reach.right + ((reach.left + reach.right) * k) / ACROSS;
      least = Math.min(least, distanceTo(through, near, x + v * Math.sin(theta), y - v * Math.cos(theta)));
    }
    if (least >= clear - 1e-6) return s;
    s += Math.max(LEAST_STEP, clear - least);
    if (s > own.length) return s;
  }
  return s;
}

/** Segments of the through line within `around` of the junction. */
function nearSegments(
  through: GuideLine,
  own: GuideLine,
  at: number,
  finder: ReturnType<typeof frameFinder>,
  around: number,
): number[] {
  finder.at(Math.min(own.length, Math.max(0, at)));
  const [x, y] = finder.frame;
  const near: number[] = [];
  for (let i = 0; i + 1 < through.u.length; i++) {
    if (through.u[i + 1] === through.u[i]) continue;
    if (segmentDistance(through, i, x, y) <= around) near.push(i);
  }
  return near;
}

function distanceTo(line: GuideLine, segments: readonly number[], x: number, y: number): number {
  let least = Infinity;
  for (const i of segments) least = Math.min(least, segmentDistance(line, i, x, y));
  return least;
}

function segmentDistance(line: GuideLine, i: number, x: number, y: number): number {
  const dx = line.x[i + 1] - line.x[i];
  const dy = line.y[i + 1] - line.y[i];
  const along = ((x - line.x[i]) * dx + (y - line.y[i]) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(line.x[i] + t * dx - x, line.y[i] + t * dy - y);
}
