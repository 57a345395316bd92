import type { Sized } from './sized.js';
import type { UnitRun } from './unit-places.js';

/** A row that keeps in step with the first one of its treatment. */
export interface Follower {
  readonly sized: Sized;
  /** as built, or left and right exchanged, seen along the walk */
  readonly hand: 1 | -1;
  readonly passes: number;
  /** distance of its line to the left of the first row's, seen along the walk, mm */
  readonly beside: number;
  /** its repeats for each repeat of the first row: 1, 2, or 1/2 */
  readonly times: number;
  /** how far it is moved along, as a share of its own repeat, 0 up to 1 */
  readonly step: number;
  /** worked on the mirror image, in the seam, of the waves that the first row is worked on */
  readonly mirrored: boolean;
}

/** What a follower's row looks like: chains of runs, and whether the only chain closes on itself. */
export interface FollowerRow {
  readonly chains: readonly (readonly UnitRun[])[];
  readonly closed: boolean;
}

/**
 * The runs of a row that follows the first one: its repeats begin where the first row's begin, so the two stay in step
 * by construction, whatever length the fit gave them. Moved along by part of a repeat, it has one repeat less on every
 * side of the line, so that it stays within the first row's ends; then each side is a chain of its own. Where the first
 * row's count leaves part of a repeat over, that stays bare, and the row begins anew behind it.
 */
export function followerRow(
  first: readonly UnitRun[],
  glide: boolean,
  ring: boolean,
  follower: Follower,
  scale: number,
): FollowerRow {
  const { sized, times, step } = follower;
  const unitsPer = sized.glide ? 2 : 1;
  const movedRing = ring && first.length === 1;
  const runs = first.map((run): UnitRun => {
    const repeats = (run.count / (glide ? 2 : 1)) * times;
    const repeat = (run.count * run.length) / repeats;
    const whole = sized.stitch.halves ? Math.floor(2 * repeats + 1e-9) / 2 : Math.floor(repeats + 1e-9);
    const fewer = step > 0 && !movedRing ? 1 : 0;
    return {
      unit: sized.build(scale, repeat),
      count: Math.max(0, Math.floor((whole - fewer) * unitsPer + 1e-9)),
      from: run.from + step * repeat,
      length: repeat / unitsPer,
    };
  });
  const worked = runs.filter((run) => run.count > 0);
  if (worked.length === 0) return { chains: [], closed: false };
  if (step > 0 && worked.length > 1) return { chains: worked.map((run) => [run]), closed: false };
  const isFilled = (i: number) =>
    Math.abs(runs[i].count * runs[i].length - first[i].count * first[i].length) < SAME;
  const isWhole = runs.every((_, i) => isFilled(i));
  const units = runs.reduce((sum, run) => sum + run.count, 0);
  const chains: UnitRun[][] = [[]];
  runs.forEach((run, i) => {
    if (run.count > 0) chains[chains.length - 1].push(run);
    if (!isFilled(i)) chains.push([]);
  });
  return {
    chains: chains.filter((chain) => chain.length > 0),
    // units that alternate hands join round a ring when there is an even number of them
    closed: ring && isWhole && (step === 0 || movedRing) && (!sized.glide || units % 2 === 0),
  };
}

/** Lengths that differ by less are the same, mm. */
const SAME = 1e-6;
