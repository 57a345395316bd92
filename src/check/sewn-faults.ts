import { SHORTEST_EVER } from '../needle/needle-points.js';
import type { Craft, Runs } from '../needle/run.js';

/** Stitches at either end of a run that may belong to its ties. */
const TIED = 4;
/** Stitches longer than the craft allows by this much are rounding, mm. */
const SLACK = 0.02;
/** More short stitches than this share of all are a fault: curves may ask for a few. Common practice. */
const FEW = 0.35;

/** Longer stitches than this snag on anything that is handled, mm. Common practice for wall pieces. */
const MUCH_TOO_LONG = 9;

/** What is wrong, and what would be right. */
export interface SewnFault {
  readonly what: string;
  readonly right: string;
  /** worth knowing, no more */
  readonly mild: boolean;
}

/**
 * Stitches too short or too long, and holes punched too often. Linear in the stitches.
 *
 * @param isFine it is knots alone, which are sewn in short stitches in any case
 */
export function sewnFaults({ xy, start }: Runs, craft: Craft, isFine = false): SewnFault[] {
  const faults: SewnFault[] = [];
  const add = (what: string, right: string, mild = false) => faults.push({ what, right, mild });
  const holes = new Map<string, number>();
  let [stitches, short, shortest, longest] = [0, 0, Infinity, 0];
  for (let run = 0; run + 1 < start.length; run++) {
    for (let i = start[run]; i < start[run + 1]; i++) {
      const tied = i - start[run] < TIED || start[run + 1] - 1 - i < TIED;
      // ties pierce their holes again on purpose
      if (!tied) {
        const hole = `${Math.round(xy[2 * i] * 20)}/${Math.round(xy[2 * i + 1] * 20)}`;
        holes.set(hole, (holes.get(hole) ?? 0) + 1);
      }
      if (i === start[run]) continue;
      const length = Math.hypot(xy[2 * i] - xy[2 * i - 2], xy[2 * i + 1] - xy[2 * i - 1]);
      longest = Math.max(longest, length);
      if (tied) continue;
      stitches++;
      shortest = Math.min(shortest, length);
      if (length < craft.shortest - SLACK) short++;
    }
  }
  const most = Math.max(0, ...holes.values());
  if (shortest < SHORTEST_EVER - SLACK) {
    add(`a stitch of ${shortest.toFixed(2)} mm is sewn`, `at least ${SHORTEST_EVER} mm`);
  }
  if (!isFine && short > FEW * stitches && stitches > 10) {
    add(
      `${Math.round((100 * short) / stitches)} % of its stitches are shorter than ${craft.shortest} mm`,
      'larger details, or a larger "smallest", sew better',
      true,
    );
  }
  if (longest > craft.longest + SLACK) {
    add(
      `a stitch of ${longest.toFixed(1)} mm is sewn`,
      `at most ${craft.longest} mm`,
      longest <= MUCH_TOO_LONG,
    );
  }
  if (most > craft.holeLimit) {
    add(`one hole is pierced ${most} times`, `at most ${craft.holeLimit} times; let legs share fewer points`);
  }
  return faults;
}
