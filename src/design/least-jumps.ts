import Flatbush from 'flatbush';
import type { Walk } from './walk.js';

/**
 * No walk over all pieces has shorter jumps than this in all, mm: into each piece but the first leads one, from whichever
 * other piece ends nearest to its start. n log n.
 */
export function leastJumps({ ends, earlier }: Walk): number {
  const n = earlier.length;
  const index = new Flatbush(n);
  for (let i = 0; i < n; i++) index.add(ends[4 * i + 2], ends[4 * i + 3]);
  index.finish();
  let sum = 0;
  let most = 0;
  for (let i = 0; i < n; i++) {
    const [x, y] = [ends[4 * i], ends[4 * i + 1]];
    const [near] = index.neighbors(x, y, 1, Number.POSITIVE_INFINITY, (one) => one !== i);
    const jump = Math.hypot(ends[4 * near + 2] - x, ends[4 * near + 3] - y);
    sum += jump;
    most = Math.max(most, jump);
  }
  return sum - most;
}
