/**
 * Whole repeats on stretches between corners. Half-repeats h_i minimize
 *   sum ln^2(r_i / p) + sum over corners ln^2(r_i / r_(i+1)),   r_i = 2 L_i / h_i,
 * so lengths are as near as can be to the one wanted and to their neighbors' at the corners. Exact, by dynamic
 * programming over h; on a ring once for each h of the first stretch. Ties go to more repeats.
 */
export interface CountQuestion {
  /** mm, each positive */
  readonly lengths: readonly number[];
  /** wanted repeat, mm */
  readonly wanted: number;
  /** whether a stretch may hold an odd number of half-repeats */
  readonly halves: boolean;
  /** every stretch holds a multiple of so many half-repeats; 1 with halves, 2 without, when not given */
  readonly step?: number;
  /** the last stretch meets the first at a corner, and the whole must be whole repeats */
  readonly ring: boolean;
}

export interface Counts {
  /** half-repeats on each stretch */
  readonly halfRepeats: readonly number[];
  readonly cost: number;
}

/** Two costs nearer than this are a tie. */
const TIE = 1e-12;

export function bestCounts(question: CountQuestion): Counts {
  const { lengths, wanted, ring } = question;
  const step = question.step ?? (question.halves ? 1 : 2);
  const greedy = lengths.map((length) => nearestCount(length, wanted, step));
  if (ring && greedy.reduce((a, b) => a + b, 0) % 2 === 1) greedy[0] += 1;
  const candidates = withinBound(question, step, costOf(greedy, question));
  if (!ring || lengths.length === 1) {
    const even = ring && lengths.length === 1;
    const firsts = even ? candidates[0].filter((h) => h % 2 === 0) : candidates[0];
    return chain(question, [firsts, ...candidates.slice(1)], null);
  }
  let best: Counts | null = null;
  for (const first of candidates[0]) {
    const found = chain(question, [[first], ...candidates.slice(1)], first);
    if (found && better(found, best)) best = found;
  }
  return best!;
}

/** Cost of given counts by the formula itself. */
export function costOf(halfRepeats: readonly number[], question: CountQuestion): number {
  const logs = halfRepeats.map((h, i) => Math.log((2 * question.lengths[i]) / h));
  const target = Math.log(question.wanted);
  let cost = 0;
  for (let i = 0; i < logs.length; i++) {
    cost += (logs[i] - target) ** 2;
    if (i > 0) cost += (logs[i] - logs[i - 1]) ** 2;
  }
  if (question.ring && logs.length > 1) cost += (logs[0] - logs[logs.length - 1]) ** 2;
  return cost;
}

function nearestCount(length: number, wanted: number, step: number): number {
  const exact = (2 * length) / wanted;
  const low = Math.max(step, Math.floor(exact / step) * step);
  const miss = (h: number) => Math.abs(Math.log((2 * length) / h / wanted));
  return miss(low) < miss(low + step) - TIE ? low : low + step;
}

/**
 * The counts that a best answer may hold: a stretch's own term can take no more of the bound than the least terms of all
 * other stretches leave.
 */
function withinBound(question: CountQuestion, step: number, bound: number): number[][] {
  const { lengths, wanted } = question;
  const miss = (length: number, h: number) => Math.log((2 * length) / (h * wanted)) ** 2;
  const least = lengths.map((length) => miss(length, nearestCount(length, wanted, step)));
  const sum = least.reduce((a, b) => a + b, 0);
  return lengths.map((length, i) => {
    const far = Math.sqrt(Math.max(0, bound - (sum - least[i]))) + 1e-9;
    const fewest = (2 * length) / (wanted * Math.exp(far));
    const most = (2 * length * Math.exp(far)) / wanted;
    const found: number[] = [];
    for (let h = Math.max(step, Math.ceil(fewest / step) * step); h <= most; h += step) found.push(h);
    return found;
  });
}

interface Candidate {
  readonly h: number;
  /** ln of the repeat it gives */
  readonly log: number;
}

interface State extends Candidate {
  readonly odd: number;
  readonly cost: number;
  readonly total: number;
  readonly from: State | null;
}

/** Best counts along a chain; with `closing` the last stretch also meets the first, and the sum must be even. */
function chain(
  question: CountQuestion,
  candidates: readonly (readonly number[])[],
  closing: number | null,
): Counts {
  const target = Math.log(question.wanted);
  let states: State[] = [];
  candidates.forEach((counts, i) => {
    const next: State[] = [];
    for (const h of counts) {
      const log = Math.log((2 * question.lengths[i]) / h);
      const own = (log - target) ** 2;
      if (i === 0) {
        next.push({ h, log, odd: h % 2, cost: own, total: h, from: null });
        continue;
      }
      for (const odd of [0, 1]) {
        let best: State | null = null;
        for (const before of states) {
          if ((before.odd + h) % 2 !== odd) continue;
          const cost = before.cost + own + (log - before.log) ** 2;
          const total = before.total + h;
          if (best === null || cost < best.cost - TIE || (cost < best.cost + TIE && total > best.total)) {
            best = { h, log, odd, cost, total, from: before };
          }
        }
        if (best) next.push(best);
      }
    }
    states = next;
  });
  let best: State | null = null;
  for (const state of states) {
    let cost = state.cost;
    if (closing !== null) {
      if (state.odd) continue;
      cost += (state.log - Math.log((2 * question.lengths[0]) / closing)) ** 2;
    }
    const closed = { ...state, cost };
    if (betterState(closed, best)) best = closed;
  }
  if (!best) return { halfRepeats: [], cost: Infinity };
  const halfRepeats: number[] = [];
  for (let state: State | null = best; state; state = state.from) halfRepeats.unshift(state.h);
  return { halfRepeats, cost: best.cost };
}

function betterState(a: State, b: State | null): boolean {
  return b === null || a.cost < b.cost - TIE || (a.cost < b.cost + TIE && a.total > b.total);
}

function better(a: Counts, b: Counts | null): boolean {
  if (b === null || a.cost < b.cost - TIE) return true;
  const sum = (counts: Counts) => counts.halfRepeats.reduce((x, y) => x + y, 0);
  return a.cost < b.cost + TIE && sum(a) > sum(b);
}
