import { bestChain, cornerCost, type Fill, TIE } from './best-chain.js';

/**
 * Whole repeats on stretches between corners. Half-repeats h_i minimize
 *   sum ln^2(r_i / p) + sum over corners ln^2(r_i / r_(i+1)),   r_i = 2 L_i / h_i,
 * so lengths are as near as can be to the one wanted and to their neighbors' at the corners.
 */
export interface CountQuestion {
  /** mm, each positive */
  readonly lengths: readonly number[];
  /** wanted repeat, mm */
  readonly wanted: number;
  /** each stretch holds a multiple of so many half-repeats */
  readonly steps: readonly number[];
  /** where the last stretch meets the first at a corner: what all half-repeats together are a multiple of */
  readonly ring: number | null;
  /** repeats are no shorter and no longer than these shares of the one wanted */
  readonly shares: readonly [least: number, most: number];
}

/** Half-repeats on each stretch; null when none are within the shares allowed. Ties go to more repeats. */
export function bestCounts(question: CountQuestion): readonly number[] | null {
  const found = bestChain(candidates(question), question.ring);
  return found?.map(({ h }) => h) ?? null;
}

/** Cost of given counts by the formula itself. */
export function costOf(halfRepeats: readonly number[], question: CountQuestion): number {
  const fills = halfRepeats.map((h, i) => fillOf(question.lengths[i], h, question.wanted));
  let cost = 0;
  for (let i = 0; i < fills.length; i++) {
    cost += fills[i].own;
    if (i > 0) cost += cornerCost(fills[i], fills[i - 1]);
  }
  if (question.ring !== null && fills.length > 1) cost += cornerCost(fills[0], fills[fills.length - 1]);
  return cost;
}

function fillOf(length: number, h: number, wanted: number): Fill {
  const log = Math.log((2 * length) / h / wanted);
  return { h, own: log ** 2, logs: [log] };
}

/** Shares that differ by less are the same. */
const SAME = 1e-9;

/**
 * The counts that a best answer may hold. Some answer costs no more than the nearest counts do, and a stretch's own term
 * can take no more of that than the least terms of all others leave.
 */
function candidates(question: CountQuestion): Fill[][] {
  const { lengths, wanted, steps } = question;
  const [shortest, longest] = question.shares;
  const greedy = nearestCounts(question);
  const bound = greedy ? costOf(greedy, question) : Infinity;
  const least = lengths.map(
    (length, i) => fillOf(length, nearestCount(length, wanted, steps[i]), wanted).own,
  );
  const sum = least.reduce((a, b) => a + b, 0);
  return lengths.map((length, i) => {
    const far = Math.exp(Math.sqrt(Math.max(0, bound - (sum - least[i]))) + SAME);
    const exact = (2 * length) / wanted;
    const fewest = exact / Math.min(far, longest * (1 + SAME));
    const most = exact / Math.max(1 / far, shortest * (1 - SAME));
    const step = steps[i];
    const found: Fill[] = [];
    for (let h = Math.max(1, Math.ceil(fewest / step)) * step; h <= most; h += step) {
      found.push(fillOf(length, h, wanted));
    }
    return found;
  });
}

/** For each stretch alone the count nearest to what is wanted; null when they are not allowed together. */
function nearestCounts(question: CountQuestion): number[] | null {
  const { lengths, wanted, steps, ring } = question;
  const [shortest, longest] = question.shares;
  const counts = lengths.map((length, i) => nearestCount(length, wanted, steps[i]));
  const over = ring === null ? 0 : counts.reduce((a, b) => a + b, 0) % ring;
  for (let i = 0; over > 0 && i < counts.length; i++) {
    const missing = ring! - over;
    if (missing % steps[i] > 0) continue;
    counts[i] += missing;
    break;
  }
  const isAllowed = counts.every((h, i) => {
    const share = (2 * lengths[i]) / h / wanted;
    return share >= shortest * (1 - SAME) && share <= longest * (1 + SAME);
  });
  return isAllowed && (ring === null || counts.reduce((a, b) => a + b, 0) % ring === 0) ? counts : null;
}

function nearestCount(length: number, wanted: number, step: number): number {
  const exact = (2 * length) / wanted;
  const low = Math.max(step, Math.floor(exact / step) * step);
  const miss = (h: number) => Math.abs(Math.log((2 * length) / h / wanted));
  return miss(low) < miss(low + step) - TIE ? low : low + step;
}
