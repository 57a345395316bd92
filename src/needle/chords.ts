import type { Spine } from './spine.js';

/** A curve's chords, mm, where neither its bend nor the thread asks for others. */
const CHORD = 1.1;
/** How far a chord may stray from the thread's line, mm: 0.08 less what the line itself, drawn in pieces, strays. */
const SAGITTA = 0.075;
/** Below this, chords pile up holes; a bend tighter than 0.3 mm is rounded instead. */
const LEAST_CHORD = 0.45;
/** A thread that wants long stitches gets chords this much longer than its shortest, so that dividing leaves none shorter. */
const ROOM = 1.1;
/** An arc is at most this much longer than its chord, on a bend that leaves room for the shortest stitch. */
const ARC = 1.025;

/**
 * Where a curve is divided into chords. Two things are asked of a chord: that it strays no further than SAGITTA from the
 * line, and that it is no shorter than the thread's shortest stitch. Where a bend is too tight for both, the line is
 * followed, in the fewest chords that can; so none is short that could be long. Elsewhere as many chords as come nearest to
 * CHORD. Either way they are as even as the bends allow.
 */
export class Chords {
  /** arc lengths along the spine, both ends included */
  at = new Float64Array(64);
  count = 0;
  /** the furthest back each point may lie for the rest of the way to be gone, from the last to the first */
  private latest = new Float64Array(64);

  /**
   * Divides from `skip` mm after the spine's start to `stop` mm before its end. Of passes side by side the outermost lies
   * `aside` mm off the line: on the inner side of a bend its chords are shorter.
   */
  divide(spine: Spine, skip: number, stop: number, shortest: number, aside: number): void {
    const { along, n } = spine;
    const end = spine.length - stop;
    this.count = 0;
    let from = skip;
    for (let i = 1; i < n; i++) {
      if (i < n - 1 && !spine.isKink(i)) continue;
      const to = Math.min(end, along[i]);
      if (to - from > LEAST_CHORD || i === n - 1) {
        this.part(spine, from, to, shortest, aside);
        from = to;
      }
    }
    this.mark(end);
  }

  /** Chords between two places without a kink between them, the end left out. */
  private part(spine: Spine, from: number, to: number, shortest: number, aside: number): void {
    const fewest = this.backFrom(spine, to, from);
    const suiting = Math.ceil((to - from) / Math.max(CHORD, ROOM * shortest) - 0.05);
    const innermost = to - from - (suiting > fewest && aside > 0 ? aside * spine.turnBetween(from, to) : 0);
    const chords = Math.max(1, fewest, Math.min(suiting, Math.floor(innermost / (ARC * shortest))));
    let place = from;
    this.mark(place);
    for (let left = chords; left > 1; left--) {
      const even = place + (to - place) / left;
      const furthest = spine.reach(place, Math.max(even, place + LEAST_CHORD), SAGITTA);
      place = Math.min(even, Math.max(furthest, place + LEAST_CHORD));
      if (left <= fewest) place = Math.max(place, this.latest[left - 1]);
      this.mark(place);
    }
  }

  /** Goes back from `to` in the longest chords that hold; `latest[k]` is where k of them lead. How many lead to `from`. */
  private backFrom(spine: Spine, to: number, from: number): number {
    let chords = 0;
    let place = to;
    while (place > from) {
      place = Math.max(from, Math.min(spine.reach(place, from, SAGITTA), place - LEAST_CHORD));
      chords++;
      if (chords === this.latest.length) this.latest = longer(this.latest);
      this.latest[chords] = place;
    }
    return chords;
  }

  private mark(at: number): void {
    if (this.count === this.at.length) this.at = longer(this.at);
    this.at[this.count++] = at;
  }
}

function longer(list: Float64Array): Float64Array {
  const more = new Float64Array(2 * list.length);
  more.set(list);
  return more;
}
