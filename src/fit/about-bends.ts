import { bendsOf } from '../geometry/bends.js';
import type { Corner, GuideLine } from '../geometry/guide-line.js';
import type { Unit } from '../stitches/stitch.js';
import type { Reach } from './band.js';
import type { Rows } from './rows.js';
import type { UnitRun } from './unit-places.js';

/** What bends more tightly than its reach over this share is a corner to a stitch that goes round. */
const BEND_SHARE = 0.36;

/** Units beside a bend become at most this much longer or shorter than the others for the sake of it. */
const MOST_CHANGE = 1.2;

export interface Settling {
  readonly guide: GuideLine;
  readonly ring: boolean;
  readonly rows: Rows;
  readonly scale: number;
  readonly reach: Reach;
}

/**
 * The runs of a line, settled about its bends where its stitch goes round corners and alternates hands, or is one of
 * figures that stand apart. Left as they are on rings, and where other rows or something laid keep in step with them.
 */
export function settledRuns(settling: Settling, runs: readonly UnitRun[]): readonly UnitRun[] {
  const { guide, ring, rows, scale, reach } = settling;
  const { sized, followers, laid, hand } = rows;
  if (sized.stitch.corner !== 'round' || ring || followers.length || laid) return runs;
  if (!sized.glide && !runs.every(({ unit }) => isApart(unit))) return runs;
  const bends = bendsOf(guide, Math.max(reach.left, reach.right) / BEND_SHARE);
  let before = 0;
  return runs.flatMap((run) => {
    const first = before % 2 === 0 ? hand : (-hand as 1 | -1);
    before += run.count;
    const { glide } = sized;
    const build = (length: number) => sized.build(scale, glide ? 2 * length : length);
    return aboutBends({ run, glide, hand: first, build }, bends);
  });
}

/**
 * Which place of a unit stands at the middle of a bend, mm from the unit's start, and the unit's hand there; null where
 * units stay as they fall.
 * @param outside of the bend, 1 to the left of the line
 */
export function settledAt(
  { sized, followers, laid, hand }: Rows,
  unit: Unit,
  outside: 1 | -1,
): { at: number; hand: 1 | -1 } | null {
  if (sized.stitch.corner !== 'round' || followers.length || laid) return null;
  if (!sized.glide) return isApart(unit) ? { at: middleOf(unit) * unit.length, hand } : null;
  const peak = peakOf(unit);
  return peak && { at: peak.at * unit.length, hand: (peak.side * outside) as 1 | -1 };
}

/** Which units, and how to build one of another length. */
interface Moving {
  readonly run: UnitRun;
  /** units alternate hands */
  readonly glide: boolean;
  /** +1 where the first unit has the hand it was built for, -1 where left and right are exchanged */
  readonly hand: 1 | -1;
  readonly build: (length: number) => Unit;
}

/**
 * Units moved along a little so that one of them stands right at the middle of each bend, of alternating hands one that
 * reaches furthest out there: that is where a hand sets the stroke or the flower that covers the corner, and the inner
 * strokes, which crowd, then stand evenly to both sides of it. Their number stays; lengths change between one bend and the next, and where they would
 * change too much the bend is left as it falls.
 */
function aboutBends({ run, glide, hand, build }: Moving, bends: readonly Corner[]): UnitRun[] {
  const peak = glide ? peakOf(run.unit) : { at: middleOf(run.unit), side: 0 };
  if (!peak) return [run];
  const anchors = [{ index: 0, u: run.from }];
  const end = { index: run.count, u: run.from + run.count * run.length };
  const ratio = (from: typeof end, to: typeof end) =>
    to.index > from.index ? (to.u - from.u) / (to.index - from.index) / run.length : Infinity;
  const isGood = (share: number) => share <= MOST_CHANGE && share >= 1 / MOST_CHANGE;
  for (const { u, turn } of bends) {
    if (u <= run.from || u >= end.u) continue;
    const outside = -Math.sign(turn);
    const before = anchors[anchors.length - 1];
    // the unit whose peak is nearest to the bend, of alternating ones that of those whose peak lies outside
    const exact = (u - run.from) / run.length - peak.at;
    const odd = peak.side * hand === outside ? 0 : 1;
    const unit = glide ? 2 * Math.round((exact - odd) / 2) + odd : Math.round(exact);
    const anchor = { index: unit + peak.at, u };
    if (isGood(ratio(before, anchor)) && isGood(ratio(anchor, end))) anchors.push(anchor);
  }
  if (anchors.length === 1) return [run];
  anchors.push(end);
  return runsBetween(anchors, run, build);
}

interface Anchor {
  /** units before it, not always whole */
  readonly index: number;
  readonly u: number;
}

/** Units over the anchors: of one length between two of them; one that an anchor stands inside gets its share of both. */
function runsBetween(anchors: readonly Anchor[], run: UnitRun, build: (length: number) => Unit): UnitRun[] {
  let k = 0;
  const boundary = (index: number): number => {
    while (k + 2 < anchors.length && anchors[k + 1].index < index) k++;
    const [a, b] = [anchors[k], anchors[k + 1]];
    return a.u + ((index - a.index) / (b.index - a.index)) * (b.u - a.u);
  };
  const at = Array.from({ length: run.count + 1 }, (_, index) => boundary(index));
  const runs: { from: number; count: number; length: number }[] = [];
  for (let i = 0; i < run.count; i++) {
    const length = at[i + 1] - at[i];
    const last = runs[runs.length - 1];
    if (last && Math.abs(last.length - length) < 1e-9) last.count++;
    else runs.push({ from: at[i], count: 1, length });
  }
  return runs.map((own) => ({ ...own, unit: build(own.length) }));
}

/**
 * Where a unit reaches furthest, as a share of its length, and to which hand: the middle of the needle points out there,
 * on the hand that has more of them (a pick-up or a bar that is whole). Null when both have as many.
 */
function peakOf({ nodes, length }: Unit): { at: number; side: 1 | -1 } | null {
  let most = 0;
  for (let i = 1; i < nodes.length; i += 2) most = Math.max(most, Math.abs(nodes[i]));
  const furthest = (side: 1 | -1): number[] => {
    const us: number[] = [];
    for (let i = 0; i < nodes.length; i += 2) if (side * nodes[i + 1] > most - 1e-9) us.push(nodes[i]);
    return us;
  };
  const [left, right] = [furthest(1), furthest(-1)];
  if (most === 0 || left.length === right.length) return null;
  const side = left.length > right.length ? 1 : -1;
  const us = side === 1 ? left : right;
  return { at: us.reduce((sum, u) => sum + u, 0) / us.length / length, side };
}

/** Whether the figures of a unit stand apart from those of the next one: nothing that is seen leads on. */
function isApart({ legs, joins, ending }: Unit): boolean {
  const ends = new Set(legs.filter(({ kind }) => kind !== 'under').flatMap(({ from, to }) => [from, to]));
  return ending.length === 0 && !joins.some(([a, b]) => ends.has(a) && ends.has(b));
}

/** The middle of what is seen of a unit, as a share of its length. */
function middleOf({ legs, length }: Unit): number {
  let [first, last] = [Infinity, -Infinity];
  for (const { kind, path } of legs) {
    if (kind === 'under') continue;
    for (let i = 0; i < path.length; i += 2) {
      first = Math.min(first, path[i]);
      last = Math.max(last, path[i]);
    }
  }
  return (first + last) / 2 / length;
}
