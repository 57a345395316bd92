import { toSteps } from '../../geometry/units.js';
import type { HotPlace } from './hot-places.js';
import type { SewnStitches } from './sewn-stitches.js';

/** Holes that the needle goes through more often than `limit` times; a hole is a place on the machine's grid of 0.1 mm. */
export function sharedHoles({ ends }: SewnStitches, limit: number): HotPlace[] {
  const counts = new Map<number, number>();
  for (let i = 2; i < ends.length; i += 4) {
    const hole = toSteps(ends[i]) * ACROSS + toSteps(ends[i + 1]);
    counts.set(hole, (counts.get(hole) ?? 0) + 1);
  }
  const found: HotPlace[] = [];
  for (const [hole, value] of counts) {
    if (value <= limit) continue;
    const x = Math.round(hole / ACROSS);
    found.push({ at: [x / 10, (hole - x * ACROSS) / 10], value });
  }
  return found;
}

/** More steps than any work is high, so that two numbers make one. */
const ACROSS = 1 << 22;
