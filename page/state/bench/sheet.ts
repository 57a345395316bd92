import type { BenchUnit } from '../../core/bench-messages.js';
import type { Spot } from './ties.js';

/** What of the unit's plane is shown, mm; x is u, y is -v. */
export interface Sheet {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Room about the unit, mm; the sheet grows in steps, so that it does not swim under a dragged point. */
const ROOM = 2;
const STEP = 3;
/** The least of its neighbors that is shown beside it, in its own lengths. */
const BESIDE = 0.4;

/** A sheet with the unit in its middle, as many of its neighbors beside it as there is room. @param aspect width by height */
export function sheetFor({ length, left, right, spots }: BenchUnit, aspect: number): Sheet {
  const stepped = (mm: number) => Math.ceil((mm + ROOM) / STEP) * STEP;
  const up = stepped(Math.max(left, ...spots.map(({ v }) => v)));
  const down = stepped(Math.max(right, ...spots.map(({ v }) => -v)));
  const before = stepped(Math.max(BESIDE * length, ...spots.map(({ u }) => -u)));
  const after = stepped(Math.max((1 + BESIDE) * length, ...spots.map(({ u }) => u)));
  const width = Math.max(before + after, (up + down) * aspect);
  const height = Math.max(up + down, width / aspect);
  return {
    left: (after - before - width) / 2,
    top: (down - up - height) / 2,
    width,
    height,
  };
}

/** Which neighbors of a unit are on the sheet: -1 is the one before it. */
export function neighborsOn({ left, width }: Sheet, length: number): number[] {
  if (!(length > 0.2)) return [];
  const first = Math.floor(left / length) - 1;
  const last = Math.ceil((left + width) / length);
  return Array.from({ length: last - first + 1 }, (_, k) => first + k).filter((k) => k !== 0);
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

/** Arrow keys move by so much, mm; with Shift by the finer. */
export const COARSE = 0.5;
export const FINE = 0.1;
