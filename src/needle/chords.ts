import type { Spine } from './spine.js';

/** What is asked of a curve's chords, mm. */
export interface ChordsAsked {
  /** as long as they are good to be where the line bends little */
  readonly wanted: number;
  readonly shortest: number;
  /** no chord is longer, however straight the line */
  readonly longest: number;
  /** of passes side by side the outermost lies this far off the line: on the inner side of a bend its chords are shorter */
  readonly aside: number;
}

/** How far a chord may stray from the thread's line, mm: 0.08 less what the line itself, drawn in pieces, strays. */
const SAGITTA = 0.075;
/** Below this, chords pile up holes; a bend tighter than 0.3 mm is rounded instead. */
const LEAST_CHORD = 0.45;
/** An arc is at most this much longer than its chord, on a bend that leaves room for the shortest stitch. */
const ARC = 1.025;
/** Chords that differ by less are alike, mm: rounding does not decide from which end a curve is divided. */
const SAME = 1e-6;

/**
 * Where a curve is divided into chords. Two things are asked of a chord: that it strays no further than SAGITTA from the
 * line, and that it is no shorter than the thread's shortest stitch. Where a bend is too tight for both, the line is
 * followed, in the fewest chords that can; so none is short that could be long. Elsewhere they are as
 * long as wanted, or less; one that lies straight between tight bends is halved where two have room. Either way they are as
 * even as the bends allow.
 */
export class Chords {
  /** arc lengths along the spine, both ends included */
  at = new Float64Array(64);
  count = 0;
  private trial = new Float64Array(64);
  /** where the longest chords lead, gone backward from the goal: before that, fewer cannot lead to it */
  private latest = new Float64Array(64);

  /** Divides from `skip` mm after the spine's start to `stop` mm before its end. */
  divide(spine: Spine, skip: number, stop: number, asked: ChordsAsked): void {
    const { along, n } = spine;
    const end = spine.length - stop;
    this.count = 0;
    let from = skip;
    for (let i = 1; i < n; i++) {
      if (i < n - 1 && !spine.isKink(i)) continue;
      const to = Math.min(end, along[i]);
      if (to - from > LEAST_CHORD || i === n - 1) {
        this.part(spine, from, to, asked);
        from = to;
      }
    }
    this.mark(end);
    for (let k = this.count - 1; k > 0; k--) this.halve(spine, k, asked);
  }

  /** Puts a place between the one before and place k, where two chords lie as well as the one. */
  private halve(spine: Spine, k: number, { wanted, shortest, aside }: ChordsAsked): void {
    const from = this.at[k - 1];
    const to = this.at[k];
    if (to - from <= wanted || to - from < 2 * ARC * shortest) return;
    if (to - from - aside * spine.turnBetween(from, to) < 2 * ARC * shortest) return;
    this.mark(0);
    this.at.copyWithin(k + 1, k, this.count - 1);
    this.at[k] = (from + to) / 2;
  }

  /** Chords between two places without a kink between them, the end left out. */
  private part(
    spine: Spine,
    from: number,
    to: number,
    { wanted, shortest, longest, aside }: ChordsAsked,
  ): void {
    const fewest = this.furthest(spine, to, from, longest);
    const suiting = Math.ceil((to - from) / wanted - 0.05);
    const innermost = to - from - (suiting > fewest && aside > 0 ? aside * spine.turnBetween(from, to) : 0);
    const chords = Math.max(1, fewest, Math.min(suiting, Math.floor(innermost / (ARC * shortest))));
    const first = this.count;
    const least = this.place(spine, from, to, chords, fewest);
    for (let k = 0; k < chords; k++) this.mark(this.trial[k]);
    // the last chord is no longer than its own bend lets it be
    if (least >= Math.min(ARC * shortest, to - this.latest[1]) - SAME) return;
    // a bend may leave more room when it is come upon from the other side
    const fewestBack = this.furthest(spine, from, to, longest);
    if (fewestBack > chords || this.place(spine, to, from, chords, fewestBack) <= least + SAME) return;
    for (let k = 1; k < chords; k++) this.at[first + k] = this.trial[chords - k];
  }

  /** Puts the starts of so many chords into `trial`, as even as they can be made one after another; the least chord. */
  private place(spine: Spine, from: number, to: number, chords: number, fewest: number): number {
    const step = to < from ? -1 : 1;
    let least = Number.POSITIVE_INFINITY;
    let at = from;
    while (chords > this.trial.length) this.trial = longer(this.trial);
    this.trial[0] = from;
    for (let k = 1; k < chords; k++) {
      const even = Math.abs(to - at) / (chords - k + 1);
      let chord = even > LEAST_CHORD ? Math.abs(spine.reach(at, at + step * even, SAGITTA) - at) : even;
      chord = Math.max(chord, Math.min(even, LEAST_CHORD));
      if (chords - k < fewest) chord = Math.max(chord, step * (this.latest[chords - k] - at));
      least = Math.min(least, chord);
      at += step * chord;
      this.trial[k] = at;
    }
    return Math.min(least, Math.abs(to - at));
  }

  /** Goes from one place to another in the longest chords that hold; `latest[k]` is where k of them lead. How many it takes. */
  private furthest(spine: Spine, from: number, to: number, longest: number): number {
    const step = to < from ? -1 : 1;
    let chords = 0;
    let left = Math.abs(to - from);
    while (left > SAME) {
      const at = to - step * left;
      left -= Math.min(left, longest, Math.max(LEAST_CHORD, Math.abs(spine.reach(at, to, SAGITTA) - at)));
      chords++;
      if (chords === this.latest.length) this.latest = longer(this.latest);
      this.latest[chords] = to - step * left;
    }
    return chords;
  }

  private mark(at: number): void {
    if (this.count === this.at.length) this.at = longer(this.at);
    this.at[this.count++] = at;
  }
}

function longer(list: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const more = new Float64Array(2 * list.length);
  more.set(list);
  return more;
}
