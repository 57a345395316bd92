import { noise } from '../geometry/noise.js';
import { type Assignment, priceOf, usesOf } from './assignment.js';

/** Rounds of simulated annealing, tries a thing and thread in each, and from where to where it cools. */
const ROUNDS = 3;
const TRIES = 400;
const LEAST_TRIES = 5_000;
const MOST_TRIES = 250_000;
const [HOT, COLD] = [0.5, 0.002];

/**
 * A good assignment: simulated annealing (S. Kirkpatrick, C. Gelatt, M. Vecchi, 1983) from the best single thread, which
 * keeps within every limit, by giving one thing, or all things sewn between two others, another thread.
 * @param start a good assignment that is known: it is gone on from, in a single round
 */
export function improved(puzzle: Assignment, seed: number, start?: readonly number[]): readonly number[] {
  const { own, order } = puzzle;
  const [things, threads] = [own.length, own[0].length];
  const first = start ?? bestSingle(puzzle);
  let best = first;
  let bestPrice = priceOf(puzzle, first);
  const tries = Math.min(MOST_TRIES, Math.max(LEAST_TRIES, TRIES * things * threads));
  for (let round = 0; round < (start ? 1 : ROUNDS); round++) {
    const state = new Worked(puzzle, best);
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

/** All things in the one thread that is best for all. */
function bestSingle(puzzle: Assignment): readonly number[] {
  const [things, threads] = [puzzle.own.length, puzzle.own[0].length];
  const all = Array.from({ length: threads }, (_, thread) => Array<number>(things).fill(thread));
  const prices = all.map((chosen) => priceOf(puzzle, chosen));
  return all[prices.indexOf(Math.min(...prices))];
}

/** An assignment with its price kept up to date: a move costs what it touches. */
class Worked {
  readonly chosen: number[];
  price: number;
  private readonly uses: Int32Array;
  private threads = 0;
  private changes = 0;
  private readonly near: { other: number; weight: number }[][];
  private readonly places: number[][];
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
    this.near = own.map(() => []);
    for (const { a, b, weight } of pairs) {
      this.near[a].push({ other: b, weight });
      this.near[b].push({ other: a, weight });
    }
    this.places = own.map(() => []);
    order.forEach((thing, i) => {
      this.places[thing].push(i);
    });
  }

  allOf(thread: number): number[] {
    const things: number[] = [];
    for (let thing = 0; thing < this.chosen.length; thing++) {
      if (this.chosen[thing] === thread) things.push(thing);
    }
    return things;
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
