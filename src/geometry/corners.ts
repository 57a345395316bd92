import type { Corner } from './guide-line.js';
import { wrapAngle } from './point.js';
import { cumulativeLength, type Points, pointCount } from './polyline.js';
import { ARM_CHORD, CORNER_TURN, CORNER_WINDOW } from './tolerances.js';

/** A turn must be this many times the median turn around it to stand out from a curve or a wriggly border. */
const OUTSTANDING = 3;
/** Sharper than this between two straights no shorter than ARM_CHORD, a vertex is a corner whatever is near it. */
const PLAIN_TURN = Math.PI / 3;

/**
 * The corners of a polyline: vertices that turn more than CORNER_TURN and three times the median turn of the other
 * vertices within CORNER_WINDOW along the line. So the chords of a curve, however coarse, are no corners; a step of two
 * right angles between straight sides has two.
 *
 * @param closed the line repeats its first point, and may have a corner there (at u = 0)
 * @param least what turns no more is none, radians
 */
export function findCorners(line: Points, closed: boolean, least = CORNER_TURN): Corner[] {
  const n = pointCount(line);
  const at = cumulativeLength(line);
  const length = at[n - 1];
  const last = n - 2;
  const heading = (i: number) => Math.atan2(line[2 * i + 3] - line[2 * i + 1], line[2 * i + 2] - line[2 * i]);
  const turns = new Float64Array(Math.max(0, n - 1));
  for (let i = closed ? 0 : 1; i <= last; i++) {
    // y points down, so a left turn lowers the heading
    turns[i] = -wrapAngle(heading(i) - heading(i > 0 ? i - 1 : last));
  }
  const corners: Corner[] = [];
  for (let i = closed ? 0 : 1; i <= last; i++) {
    const turn = Math.abs(turns[i]);
    if (turn <= least) continue;
    const before = i > 0 ? at[i] - at[i - 1] : length - at[last];
    const plain = turn > PLAIN_TURN && Math.min(before, at[i + 1] - at[i]) >= ARM_CHORD;
    if (plain || turn > OUTSTANDING * medianAround(i, turns, at, closed))
      corners.push({ u: at[i], turn: turns[i] });
  }
  return corners;
}

/** Median of the turns at other vertices within the window on both sides; 0 when there are none. */
function medianAround(i: number, turns: Float64Array, at: Float64Array, closed: boolean): number {
  const count = turns.length;
  const length = at[at.length - 1];
  const around: number[] = [];
  for (const way of [1, -1]) {
    for (let step = 1; step < count; step++) {
      let j = i + way * step;
      let far = 0;
      if (closed) {
        far = j < 0 || j >= count ? length : 0;
        j = (j + count) % count;
      } else if (j < 1 || j >= count) break;
      if (far + way * (at[j] - at[i]) > CORNER_WINDOW) break;
      around.push(Math.abs(turns[j]));
    }
  }
  if (!around.length) return 0;
  around.sort((a, b) => a - b);
  const middle = around.length >> 1;
  return around.length % 2 ? around[middle] : (around[middle - 1] + around[middle]) / 2;
}
