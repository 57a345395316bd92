import { noise } from '../geometry/noise.js';

/** Things that each get one of several threads, sewn in a given order. */
export interface Assignment {
  /** price of each thread for each thing, 0 or more */
  readonly own: readonly (readonly number[])[];
  /** pairs of things that are seen together; the price is that of their threads times the weight */
  readonly pairs: readonly { readonly a: number; readonly b: number; readonly weight: number }[];
  /** price of two threads side by side, 0 or more, the same both ways */
  readonly clash: readonly (readonly number[])[];
  /** the things in the order in which they are sewn; one may come several times */
  readonly order: readonly number[];
  /** price of each thread that is in use, and of each change from one to another */
  readonly perThread: number;
  readonly perChange: number;
  /** so many threads at most, and so many changes */
  readonly mostThreads?: number;
  readonly mostChanges?: number;
}

export interface Assigned {
  /** for each thing its thread */
  readonly chosen: readonly number[];
  readonly price: number;
  /** no assignment is better: every one was looked at, or shown to be no better without a look */
  readonly isBest: boolean;
}

/** Steps of the exact search: about a second. */
const MOST_STEPS = 400_000;

/**
 * The best thread for each thing. A search that only goes on improves one assignment; then all that could be better are
 * gone through, as long as that takes no more than a second: so small ones come out exact, and large ones good.
 * @param most steps of the exact search
 */
export function assignThreads(puzzle: Assignment, seed: number, most = MOST_STEPS): Assigned {
  if (puzzle.own.length === 0) return { chosen: [], price: 0, isBest: true };
  const good = improved(puzzle, seed);
  const { chosen, isDone } = exact(puzzle, good, most);
  return { chosen, price: priceOf(puzzle, chosen), isBest: isDone };
}

/** How many threads are in use, and how often one is changed for another. */
export function usesOf(
  { order }: Pick<Assignment, 'order'>,
  chosen: readonly number[],
): { threads: number; changes: number } {
  const changes = order.reduce(
    (sum, thing, i) => sum + (i > 0 && chosen[thing] !== chosen[order[i - 1]] ? 1 : 0),
    0,
  );
  return { threads: new Set(chosen).size, changes };
}

/** What an assignment costs; Infinity where it takes more threads or changes than there may be. */
export function priceOf(puzzle: Assignment, chosen: readonly number[]): number {
  const { own, pairs, clash, perThread, perChange, mostThreads = Infinity, mostChanges = Infinity } = puzzle;
  const { threads, changes } = usesOf(puzzle, chosen);
  if (threads > mostThreads || changes > mostChanges) return Infinity;
  return (
    chosen.reduce((sum, thread, thing) => sum + own[thing][thread], 0) +
    pairs.reduce((sum, { a, b, weight }) => sum + weight * clash[chosen[a]][chosen[b]], 0) +
    perThread * threads +
    perChange * changes
  );
}

/** Rounds of simulated annealing, tries a thing and thread in each, and from where to where it cools. */
const ROUNDS = 3;
const TRIES = 400;
const LEAST_TRIES = 5_000;
const MOST_TRIES = 250_000;
const [HOT, COLD] = [0.5, 0.002];

/**
 * A good assignment: simulated annealing (S. Kirkpatrick, C. Gelatt, M. Vecchi, 1983) from the best single thread, which
 * keeps within every limit, by giving one thing, or all things sewn between two others, another thread.
 */
export function improved(puzzle: Assignment, seed: number): readonly number[] {
  const { own, order } = puzzle;
  const [things, threads] = [own.length, own[0].length];
  const price = (chosen: readonly number[]) => priceOf(puzzle, chosen);
  const single = Array.from({ length: threads }, (_, t) => Array<number>(things).fill(t)).reduce((a, b) =>
    price(b) < price(a) ? b : a,
  );
  let best: readonly number[] = single;
  let bestPrice = price(single);
  const tries = Math.min(MOST_TRIES, Math.max(LEAST_TRIES, TRIES * things * threads));
  for (let round = 0; round < ROUNDS; round++) {
    const state = new Worked(puzzle, round === 0 ? single : best);
    let n = 0;
    const random = (below: number) => Math.floor(((noise(seed, 7100 + round, n++) + 1) / 2) * below) % below;
    for (let i = 0; i < tries; i++) {
      const heat = HOT * (COLD / HOT) ** (i / tries);
      // most moves touch one thing: those that touch many cost as much as many
      const kind = random(32);
      const thread = random(threads);
      const from = random(order.length);
      const moved =
        kind < 23
          ? [random(things)]
          : kind < 31
            ? order.slice(from, from + 1 + random(Math.min(12, order.length)))
            : state.allOf(state.chosen[random(things)]);
      const gain = state.set(moved, thread);
      const chance = (noise(seed, 7200 + round, i) + 1) / 2;
      if (gain > 0 && chance >= Math.exp(-gain / heat)) state.back();
      else if (state.price < bestPrice - 1e-9) {
        best = [...state.chosen];
        bestPrice = state.price;
      }
    }
  }
  return best;
}

/** An assignment with its price kept up to date: a move costs what it touches. */
class Worked {
  readonly chosen: number[];
  price: number;
  private readonly uses: Int32Array;
  private threads = 0;
  private changes = 0;
  private readonly near: readonly (readonly { other: number; weight: number }[])[];
  private readonly places: readonly (readonly number[])[];
  private undo: { things: number[]; threads: number[]; price: number } | null = null;

  constructor(
    private readonly puzzle: Assignment,
    start: readonly number[],
  ) {
    const { own, pairs, order } = puzzle;
    this.chosen = [...start];
    this.price = priceOf(puzzle, start);
    this.uses = new Int32Array(own[0].length);
    for (const thread of start) this.uses[thread]++;
    ({ threads: this.threads, changes: this.changes } = usesOf(puzzle, start));
    this.near = own.map((_, thing) =>
      pairs.flatMap(({ a, b, weight }) =>
        a === thing ? [{ other: b, weight }] : b === thing ? [{ other: a, weight }] : [],
      ),
    );
    this.places = own.map((_, thing) => order.flatMap((one, i) => (one === thing ? [i] : [])));
  }

  allOf(thread: number): number[] {
    return this.chosen.flatMap((one, thing) => (one === thread ? [thing] : []));
  }

  /** Gives things a thread; what the price gains by it, Infinity beyond a limit. `back` takes it back. */
  set(things: readonly number[], thread: number): number {
    const before = this.price;
    this.undo = { things: [], threads: [], price: before };
    let price = before;
    for (const thing of things) {
      if (this.chosen[thing] === thread) continue;
      this.undo.things.push(thing);
      this.undo.threads.push(this.chosen[thing]);
      price += this.give(thing, thread);
    }
    this.price = price;
    const { mostThreads = Infinity, mostChanges = Infinity } = this.puzzle;
    return this.threads > mostThreads || this.changes > mostChanges ? Infinity : price - before;
  }

  back(): void {
    const { things, threads, price } = this.undo!;
    for (let i = things.length - 1; i >= 0; i--) this.give(things[i], threads[i]);
    this.price = price;
  }

  private give(thing: number, thread: number): number {
    const { own, clash, perThread, perChange } = this.puzzle;
    const was = this.chosen[thing];
    let gain = own[thing][thread] - own[thing][was];
    for (const { other, weight } of this.near[thing]) {
      const beside = this.chosen[other];
      gain += weight * (clash[thread][beside] - clash[was][beside]);
    }
    const changes = this.changesAt(thing);
    this.chosen[thing] = thread;
    const more = this.changesAt(thing) - changes;
    this.changes += more;
    const fewer = --this.uses[was] === 0 ? 1 : 0;
    const added = this.uses[thread]++ === 0 ? 1 : 0;
    this.threads += added - fewer;
    return gain + perThread * (added - fewer) + perChange * more;
  }

  /** Changes on both sides of a thing's places, each counted once. */
  private changesAt(thing: number): number {
    const { order } = this.puzzle;
    let count = 0;
    for (const i of this.places[thing]) {
      if (i > 0 && this.chosen[order[i]] !== this.chosen[order[i - 1]]) count++;
      const next = order[i + 1];
      if (next !== undefined && next !== thing && this.chosen[order[i]] !== this.chosen[next]) count++;
    }
    return count;
  }
}

/**
 * Branch and bound (A. Land, A. Doig, 1960): things in the order they are sewn, threads from the cheapest; a branch is left
 * when even the cheapest threads for all that is open would make it no better than the best that is known.
 */
function exact(
  puzzle: Assignment,
  known: readonly number[],
  most: number,
): { chosen: readonly number[]; isDone: boolean } {
  const {
    own,
    pairs,
    clash,
    order,
    perThread,
    perChange,
    mostThreads = Infinity,
    mostChanges = Infinity,
  } = puzzle;
  const [things, threads] = [own.length, own[0].length];
  const turn = [...new Set([...order, ...own.keys()])];
  const rank = new Int32Array(things);
  turn.forEach((thing, i) => {
    rank[thing] = i;
  });
  // what a thing's price also depends on that has its thread by then
  const before = turn.map((thing) =>
    pairs.flatMap(({ a, b, weight }) => {
      const other = a === thing ? b : b === thing ? a : -1;
      return other >= 0 && rank[other] < rank[thing] ? [{ other, weight }] : [];
    }),
  );
  const sewnBefore = turn.map((thing) =>
    order.flatMap((one, i) => {
      const next = order[i + 1];
      if (next === undefined || one === next) return [];
      if (one === thing && rank[next] < rank[thing]) return [next];
      return next === thing && rank[one] < rank[thing] ? [one] : [];
    }),
  );
  const open = new Float64Array(things + 1);
  for (let i = things - 1; i >= 0; i--) open[i] = open[i + 1] + Math.min(...own[turn[i]]);
  const chosen = new Int32Array(things).fill(-1);
  const uses = new Int32Array(threads);
  let best = [...known];
  let bestPrice = priceOf(puzzle, known);
  let steps = 0;

  const search = (i: number, price: number, used: number, changes: number): void => {
    if (i === things) {
      if (price < bestPrice - 1e-9) {
        bestPrice = price;
        best = [...chosen];
      }
      return;
    }
    const thing = turn[i];
    const moves: { thread: number; price: number; used: number; changes: number }[] = [];
    for (let thread = 0; thread < threads; thread++) {
      let next = price + own[thing][thread];
      for (const { other, weight } of before[i]) next += weight * clash[thread][chosen[other]];
      let more = 0;
      for (const other of sewnBefore[i]) if (chosen[other] !== thread) more++;
      const added = uses[thread] === 0 ? 1 : 0;
      next += perThread * added + perChange * more;
      if (used + added > mostThreads || changes + more > mostChanges) continue;
      moves.push({ thread, price: next, used: used + added, changes: changes + more });
    }
    moves.sort((a, b) => a.price - b.price || a.thread - b.thread);
    for (const move of moves) {
      if (move.price + open[i + 1] >= bestPrice - 1e-9) return;
      if (++steps > most) return;
      chosen[thing] = move.thread;
      uses[move.thread]++;
      search(i + 1, move.price, move.used, move.changes);
      uses[move.thread]--;
      chosen[thing] = -1;
    }
  };
  search(0, 0, 0, 0);
  return { chosen: best, isDone: steps <= most };
}
