import type { Chain } from '../fit/fit.js';
import { SHORTEST_EVER } from './needle-points.js';

/** A curve's chords, mm, where neither its bend nor the thread asks for others. */
const CHORD = 1.1;
/** How far a chord is meant to stray from the thread's line, and the most it may, to keep a chord from getting too short: 0.08 mm less what a bend that changes along the chord adds. */
const SAGITTA = 0.065;
const MOST_SAGITTA = 0.075;
const GIVE = Math.sqrt(MOST_SAGITTA / SAGITTA);
/** Below this, chords pile up holes; a bend tighter than 0.3 mm is rounded instead. */
const LEAST_CHORD = 0.45;
/** A vertex that turns more is a kink of the line and gets a needle point of its own. */
const KINK = Math.cos((25 * Math.PI) / 180);
/** A thread that wants long stitches gets chords this much longer than its shortest, so that dividing leaves none shorter. */
const ROOM = 1.1;
/** An arc is at most this much longer than its chord, on a bend that leaves room for the shortest stitch. */
const ARC = 1.025;

/** The line of one leg by arc length, mm, and where it is divided; buffers are reused from leg to leg. */
export class Spine {
  length = 0;
  /** place and unit tangent after `goTo` */
  x = 0;
  y = 0;
  tx = 1;
  ty = 0;
  private path: Float64Array = new Float64Array(0);
  private first = 0;
  private n = 0;
  private along = new Float64Array(64);
  private kink = new Uint8Array(64);
  /** for each piece of the path the chord that suits its bend, mm, and by what factor longer it may be at most */
  private chord = new Float64Array(64);
  private room = new Float64Array(64);
  private divisions = { at: new Float64Array(64), count: 0 };
  private cursor = 1;

  /** Takes up a leg. */
  measure({ path, pathStart }: Chain, leg: number): void {
    const first = pathStart[leg];
    const n = pathStart[leg + 1] - first;
    if (this.along.length < n) this.make(2 * n);
    this.path = path;
    this.first = 2 * first;
    this.n = n;
    const { along } = this;
    along[0] = 0;
    for (let i = 1, p = 2 * first; i < n; i++, p += 2) {
      const dx = path[p + 2] - path[p];
      const dy = path[p + 3] - path[p + 1];
      along[i] = along[i - 1] + Math.sqrt(dx * dx + dy * dy);
    }
    this.length = along[n - 1];
    this.cursor = 1;
  }

  private make(n: number): void {
    this.along = new Float64Array(n);
    this.kink = new Uint8Array(n);
    this.chord = new Float64Array(n);
    this.room = new Float64Array(n);
  }

  /** Moves to an arc length no smaller than that before. */
  goTo(at: number): void {
    const { along, path } = this;
    while (this.cursor < this.n - 1 && along[this.cursor] < at) this.cursor++;
    const i = this.cursor;
    const p = this.first + 2 * i;
    const length = along[i] - along[i - 1];
    const dx = path[p] - path[p - 2];
    const dy = path[p + 1] - path[p - 1];
    const t = length > 0 ? (at - along[i - 1]) / length : 0;
    this.x = path[p - 2] + dx * t;
    this.y = path[p - 1] + dy * t;
    this.tx = length > 0 ? dx / length : 1;
    this.ty = length > 0 ? dy / length : 0;
  }

  /** Arc lengths of needle points from `skip` mm after the start to `stop` mm before the end, both included; chords of `shortest` mm or more where the bend allows. */
  chords(
    skip: number,
    stop: number,
    shortest: number,
  ): { readonly at: Float64Array; readonly count: number } {
    this.suitChords(shortest);
    const { along, kink, n } = this;
    this.divisions.count = 0;
    const end = this.length - stop;
    let from = skip;
    let begin = 1;
    for (let i = 1; i < n; i++) {
      if (i < n - 1 && kink[i] === 0) continue;
      const to = Math.min(end, along[i]);
      if (to - from > LEAST_CHORD || i === n - 1) {
        this.divide(begin, i, from, to, shortest);
        from = to;
        begin = i + 1;
      }
    }
    this.mark(end);
    return this.divisions;
  }

  /** The chord that suits each piece of the path: the sharper its ends bend, the shorter. */
  private suitChords(shortest: number): void {
    const { chord, room, n } = this;
    const longest = Math.max(CHORD, ROOM * shortest);
    let before = Number.POSITIVE_INFINITY;
    for (let i = 1, p = this.first; i < n; i++, p += 2) {
      const after = i < n - 1 ? this.radiusAt(i, p) : Number.POSITIVE_INFINITY;
      const radius = Math.min(before, after);
      before = after;
      // a chord c of a circle of radius r strays c^2 / 8 r from it
      const good = Math.sqrt(8 * SAGITTA * radius);
      const most = Math.max(LEAST_CHORD, GIVE * good);
      chord[i] = Math.min(longest, most, Math.max(good, shortest, LEAST_CHORD));
      room[i] = most / chord[i];
    }
  }

  /** Radius of the circle through vertex i and its neighbors (Menger), mm; without end on a straight. A kink has none, and is marked. */
  private radiusAt(i: number, p: number): number {
    const { path, along, kink } = this;
    const ux = path[p + 2] - path[p];
    const uy = path[p + 3] - path[p + 1];
    const vx = path[p + 4] - path[p + 2];
    const vy = path[p + 5] - path[p + 3];
    const product = (along[i] - along[i - 1]) * (along[i + 1] - along[i]);
    const sharp = ux * vx + uy * vy < KINK * product;
    kink[i] = sharp ? 1 : 0;
    if (sharp || product === 0) return Number.POSITIVE_INFINITY;
    const wx = ux + vx;
    const wy = uy + vy;
    return (product * Math.sqrt(wx * wx + wy * wy)) / (2 * Math.abs(ux * vy - uy * vx));
  }

  /**
   * Chords between two arc lengths within pieces `begin` to `last`, the end left out: each as long as its bend allows in
   * comparison with the others. Fewer than suit, where they would be shorter than `shortest` and the bend leaves room.
   */
  private divide(begin: number, last: number, from: number, to: number, shortest: number): void {
    const { along, chord, room } = this;
    let total = 0;
    let least = Number.POSITIVE_INFINITY;
    let tightest = Number.POSITIVE_INFINITY;
    for (let i = begin; i <= last; i++) {
      const own = Math.min(to, along[i]) - Math.max(from, along[i - 1]);
      if (own <= 0) continue;
      total += own / chord[i];
      if (room[i] < least) least = room[i];
      if (chord[i] < tightest) tightest = chord[i];
    }
    const suiting = Math.ceil(total - 0.05);
    const fewest = Math.ceil(total / least - 1e-9);
    const wanted = Math.max(fewest, Math.min(suiting, Math.floor((to - from) / (ARC * shortest))));
    const chords = Math.max(1, Math.min(wanted, Math.floor((total * tightest) / (ARC * SHORTEST_EVER))));
    const each = total / chords;
    let k = 0;
    let sum = 0;
    for (let i = begin; i <= last && k < chords; i++) {
      const a = Math.max(from, along[i - 1]);
      const own = (Math.min(to, along[i]) - a) / chord[i];
      if (own <= 0) continue;
      while (k < chords && k * each <= sum + own) {
        this.mark(a + (k * each - sum) * chord[i]);
        k++;
      }
      sum += own;
    }
  }

  private mark(at: number): void {
    const { divisions } = this;
    if (divisions.count === divisions.at.length) {
      const more = new Float64Array(2 * divisions.count);
      more.set(divisions.at);
      divisions.at = more;
    }
    divisions.at[divisions.count++] = at;
  }
}
