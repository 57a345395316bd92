import { int32s } from '../geometry/flat.js';
import type { Points } from '../geometry/polyline.js';
import type { Runs } from '../needle/run.js';

/** Places on a line are told apart by this, mm. */
const STEP = 0.5;

/** From where to where, mm along a line. */
export type Along = readonly [from: number, to: number];

/**
 * Parts of a stretch of a line that its own thread may leave open, of which any longer than `over` is among these: a stitch whose
 * middle is d away from a place covers reach - d to either side of that for certain. What is told may be covered all the same.
 * Linear in the stitches, as long as they follow the line.
 *
 * @param at the line's length up to each of its points
 */
export function openStretches(
  line: Points,
  at: Float64Array,
  stretch: Along,
  reach: number,
  own: readonly Runs[],
  over: number,
): Along[] {
  let open: Along[] = [];
  for (const every of EVERY) {
    open = openBeside(line, at, stretch, reach, own, over, every);
    if (open.length === 0) break;
  }
  return open;
}

/** One stitch in so many is looked at: most lines are covered by a few of theirs already. */
const EVERY = [16, 4, 1];

/** The same, where one stitch in `every` is looked at. */
function openBeside(
  line: Points,
  at: Float64Array,
  [first, last]: Along,
  reach: number,
  own: readonly Runs[],
  over: number,
  every: number,
): Along[] {
  if (last - first <= over) return [];
  const places = Math.floor((last - first) / STEP) + 1;
  /** by how much the number of stitches that cover a place differs from that of the place before */
  const change = int32s(places + 1);
  let i = 0;
  for (const { xy, start } of own) {
    for (let run = 0; run + 1 < start.length; run++) {
      for (let p = 2 * start[run]; p + 2 < 2 * start[run + 1]; p += 2 * every) {
        // thread crosses the line between needle points
        const x = (xy[p] + xy[p + 2]) / 2;
        const y = (xy[p + 1] + xy[p + 3]) / 2;
        // it follows the line, so that the nearest piece of that is near the one before
        let square = away(line, i, x, y);
        for (let step = 1; step >= -1; step -= 2) {
          while (i + step >= 0 && i + step + 1 < at.length) {
            const next = away(line, i + step, x, y);
            if (next >= square) break;
            square = next;
            i += step;
          }
        }
        const room = reach - Math.sqrt(square);
        if (room <= 0) continue;
        const u = at[i] + shareOf(line, i, x, y) * (at[i + 1] - at[i]) - first;
        const from = Math.max(0, Math.ceil((u - room) / STEP));
        const to = Math.min(places - 1, Math.floor((u + room) / STEP));
        if (from > to) continue;
        change[from]++;
        change[to + 1]--;
      }
    }
  }
  const open: Along[] = [];
  let coveredTo = first;
  const tell = (to: number) => {
    if (to - coveredTo > over) open.push([coveredTo, to]);
  };
  for (let place = 0, stitches = 0; place < places; place++) {
    stitches += change[place];
    if (stitches === 0) continue;
    tell(first + place * STEP);
    coveredTo = first + place * STEP;
  }
  tell(last);
  return open;
}

/** How far along piece i of a line, 0 to 1, the place lies that is nearest to a point. */
function shareOf(line: Points, i: number, x: number, y: number): number {
  const dx = line[2 * i + 2] - line[2 * i];
  const dy = line[2 * i + 3] - line[2 * i + 1];
  const square = dx * dx + dy * dy;
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, ((x - line[2 * i]) * dx + (y - line[2 * i + 1]) * dy) / square));
}

/** Square of the distance of a point from piece i of a line. */
function away(line: Points, i: number, x: number, y: number): number {
  const t = shareOf(line, i, x, y);
  const ax = line[2 * i] + t * (line[2 * i + 2] - line[2 * i]) - x;
  const ay = line[2 * i + 1] + t * (line[2 * i + 3] - line[2 * i + 1]) - y;
  return ax * ax + ay * ay;
}
