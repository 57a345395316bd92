import type { BenchUnit } from '../../core/bench-messages.js';
import type { Spot } from './ties.js';

/** How the unit lies on the sheet of the bench: mm to its left and above it that are shown, and how large. */
export interface Sheet {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Room about the unit, mm; the sheet grows in steps, so that it does not swim under a dragged point. */
const ROOM = 3;
const STEP = 4;

/** A sheet on which a unit lies with some of its neighbors. u runs to the right, v upward. */
export function sheetFor({ length, left, right, spots }: BenchUnit): Sheet {
  const stepped = (mm: number) => Math.ceil((mm + ROOM) / STEP) * STEP;
  const up = stepped(Math.max(left, ...spots.map(({ v }) => v)));
  const down = stepped(Math.max(right, ...spots.map(({ v }) => -v)));
  const before = stepped(Math.max(0, ...spots.map(({ u }) => -u)));
  const after = stepped(Math.max(length, ...spots.map(({ u }) => u)));
  return { left: -before, top: -up, width: before + after, height: up + down };
}

/** The nearest of some places within reach, mm. */
export function nearestSpot<S extends Spot>(
  spots: readonly S[],
  u: number,
  v: number,
  reach: number,
): S | null {
  let found: S | null = null;
  let least = reach;
  for (const spot of spots) {
    const far = Math.hypot(spot.u - u, spot.v - v);
    if (far < least) [found, least] = [spot, far];
  }
  return found;
}

/** A dragged point comes to lie on tenths of a millimeter. */
export const onTenths = (mm: number): number => Math.round(mm * 10) / 10;
