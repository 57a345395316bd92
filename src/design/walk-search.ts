import Flatbush from 'flatbush';
import { jumpBetween, laterOf, type Walk } from './walk.js';

/** Pieces that start nearest to where one ends: only these are tried next after it. */
const NEAR = 12;
/** Among so many more that are as near, the first ones are taken. */
const TIED = 4;
/** The second stretch of a change is at most this long. */
const FAR = 60;
/** Tries to get out of a walk that no single change makes shorter: so many, and fewer where there are many pieces. */
const KICKS_PER_PIECE = 10;
const [LEAST_KICKS, MOST_KICKS] = [700, 1500];
const KICKED_PIECES = 300_000;
const KICK_LENGTH = 30;
const MORE_SWAPS = 4;
const KICK_TRIES = 12;

/**
 * Makes a walk shorter: two stretches that lie side by side in it change places (Or-opt, Or 1976, for stretches of any
 * length), which reverses no piece. Where nothing more is gained so, a random change at one place is made and made good
 * again, and kept if the walk is shorter for it (iterated local search; Lourenço, Martin and Stützle, 2003; from memory).
 * Random numbers are the same every time.
 */
export class WalkSearch {
  private readonly n: number;
  private readonly order: Int32Array;
  private readonly place: Int32Array;
  private readonly spare: Int32Array;
  private readonly later: readonly (readonly number[])[];
  private readonly near: readonly (readonly number[])[];
  /** pieces beside which the walk has changed */
  private todo: number[];
  private readonly isTodo: Uint8Array;
  /** changes since the last kick: first, middle, last place */
  private done: [number, number, number][] = [];
  private random = 12345;

  constructor(
    private readonly walk: Walk,
    order: Int32Array,
  ) {
    this.n = order.length;
    this.order = order.slice();
    this.place = new Int32Array(this.n);
    this.spare = new Int32Array(this.n);
    this.renumber(0, this.n - 1);
    this.later = laterOf(walk);
    this.near = nearOnes(walk);
    this.todo = [...order];
    this.isTodo = new Uint8Array(this.n).fill(1);
  }

  /** Until no single change makes it shorter. */
  settled(): Int32Array {
    this.settle();
    return this.order.slice();
  }

  /** As short as tries beyond that make it: a share of those that are worth it for any pieces. */
  shorten(share = 1): Int32Array {
    this.settle();
    const most = Math.min(
      Math.max(LEAST_KICKS, KICKS_PER_PIECE * this.n),
      MOST_KICKS,
      Math.ceil(KICKED_PIECES / this.n),
    );
    for (let kick = Math.round(share * most); kick > 0; kick--) {
      this.done = [];
      let saved = this.kick();
      for (let more = this.whole(MORE_SWAPS); more > 0; more--) saved += this.kick();
      saved += this.settle();
      if (saved > 0) continue;
      this.undo();
    }
    return this.order;
  }

  private undo(): void {
    for (const [i, j, k] of [...this.done].reverse()) this.swap(i, i + k - j - 1, k);
    for (const piece of this.todo) this.isTodo[piece] = 0;
    this.todo = [];
  }

  /** Changes as long as that saves anything. What it saves. */
  private settle(): number {
    let saved = 0;
    while (this.todo.length) {
      const piece = this.todo.pop()!;
      this.isTodo[piece] = 0;
      for (let more = this.improve(piece); more > 0; more = this.improve(piece)) saved += more;
    }
    return saved;
  }

  /**
   * Makes the best change by which `a` is followed by a piece nearer than the one that follows it now, or by none. What that
   * saves. No change saves anything unless it brings one of the three pieces whose followers change nearer to its own (the
   * gain criterion of Lin and Kernighan, 1973), so that nothing is missed by looking at such alone.
   */
  private improve(a: number): number {
    const at = this.place[a];
    if (at === this.n - 1) return 0;
    let best = 0;
    let change: [number, number, number] | null = null;
    const look = (i: number, j: number, k: number) => {
      const saves = this.saves(i, j, k);
      if (saves <= best) return;
      best = saves;
      change = [i, j, k];
    };
    const now = this.jump(at, at + 1);
    for (const d of this.near[a]) {
      const to = this.place[d];
      if (jumpBetween(this.walk.ends, a, d) >= now) break;
      if (to < at) this.putBehind(to, at, look);
      else {
        this.bringNearer(at + 1, to, look);
        this.moveOn(at, to, look);
      }
    }
    this.moveOn(at, this.n, look);
    if (!change) return 0;
    this.swap(...(change as [number, number, number]));
    return best;
  }

  /** Stretches that end at `at` and may come behind what follows them up to before `to`. */
  private moveOn(at: number, to: number, look: (i: number, j: number, k: number) => void): void {
    const last = Math.max(0, at - FAR);
    for (let i = at; i >= last; i--) {
      for (const after of this.later[this.order[i]]) {
        if (this.place[after] > at && this.place[after] < to) return;
      }
      look(i, at, to - 1);
    }
  }

  /** Stretches that begin at `to` and may come before the one from `from` up to it. */
  private bringNearer(from: number, to: number, look: (i: number, j: number, k: number) => void): void {
    const last = Math.min(this.n - 1, to + FAR);
    for (let k = to; k <= last; k++) {
      for (const before of this.walk.earlier[this.order[k]]) {
        if (this.place[before] >= from && this.place[before] < to) return;
      }
      look(from, to - 1, k);
    }
  }

  /** Stretches that begin at `from` and may come behind what follows them up to `to`. */
  private putBehind(from: number, to: number, look: (i: number, j: number, k: number) => void): void {
    const last = Math.min(to - 1, from + FAR);
    let needed = from;
    for (let j = from; j <= last; j++) {
      for (const after of this.later[this.order[j]]) {
        if (this.place[after] <= to && this.place[after] > needed) needed = this.place[after];
      }
      if (needed >= to) return;
      if (needed <= j) look(from, j, to);
    }
  }

  /** What is saved when the stretches from place i to j and from j + 1 to k change places. */
  private saves(i: number, j: number, k: number): number {
    return (
      this.jump(i - 1, i) +
      this.jump(j, j + 1) +
      this.jump(k, k + 1) -
      this.jump(i - 1, j + 1) -
      this.jump(k, i) -
      this.jump(j, k + 1)
    );
  }

  /** From the piece at place p to that at q; nothing before the first and after the last. */
  private jump(p: number, q: number): number {
    if (p < 0 || q >= this.n) return 0;
    return jumpBetween(this.walk.ends, this.order[p], this.order[q]);
  }

  private swap(i: number, j: number, k: number): void {
    const { order, spare } = this;
    for (const place of [i - 1, i, j, j + 1, k, k + 1]) {
      if (place >= 0 && place < this.n) this.touch(order[place]);
    }
    const first = spare.subarray(0, j - i + 1);
    first.set(order.subarray(i, j + 1));
    order.copyWithin(i, j + 1, k + 1);
    order.set(first, i + k - j);
    this.renumber(i, k);
    this.done.push([i, j, k]);
  }

  private touch(piece: number): void {
    if (this.isTodo[piece]) return;
    this.isTodo[piece] = 1;
    this.todo.push(piece);
  }

  private renumber(from: number, to: number): void {
    for (let i = from; i <= to; i++) this.place[this.order[i]] = i;
  }

  /** Two stretches at a random place change places, if any found in a few tries may. What that saves, mostly less than nothing. */
  private kick(): number {
    for (let tries = 0; tries < KICK_TRIES; tries++) {
      const most = 1 + this.whole(Math.max(1, Math.min(KICK_LENGTH, this.n >> 1)));
      const i = this.whole(this.n - 1);
      const j = Math.min(this.n - 2, i + this.whole(most));
      const k = Math.min(this.n - 1, j + 1 + this.whole(most));
      if (!this.mayChange(i, j, k)) continue;
      const saved = this.saves(i, j, k);
      this.swap(i, j, k);
      return saved;
    }
    return 0;
  }

  private mayChange(i: number, j: number, k: number): boolean {
    for (let at = j + 1; at <= k; at++) {
      for (const before of this.walk.earlier[this.order[at]]) {
        if (this.place[before] >= i && this.place[before] <= j) return false;
      }
    }
    return true;
  }

  /** A whole number below `under` (Park and Miller's minimal standard generator, 1988). */
  private whole(under: number): number {
    this.random = (this.random * 48271) % 2147483647;
    return this.random % under;
  }
}

function nearOnes({ ends, earlier }: Walk): number[][] {
  const n = earlier.length;
  const index = new Flatbush(n);
  for (let i = 0; i < n; i++) index.add(ends[4 * i], ends[4 * i + 1]);
  index.finish();
  return earlier.map((_, piece) =>
    index
      .neighbors(
        ends[4 * piece + 2],
        ends[4 * piece + 3],
        NEAR + TIED,
        Number.POSITIVE_INFINITY,
        (i) => i !== piece,
      )
      .sort((a, b) => jumpBetween(ends, piece, a) - jumpBetween(ends, piece, b) || a - b)
      .slice(0, NEAR),
  );
}
