import type { Chain } from '../fit/fit.js';

/** A curve's needle points: chords of up to 1.2 mm, shorter where it bends, so that none strays 0.08 mm from the thread's line. */
const CHORD = 1.1;
const SAGITTA = 0.065;
/** Below this, chords pile up holes; a bend tighter than 0.3 mm is rounded instead. */
const LEAST_CHORD = 0.45;
/** A vertex that turns more is a kink of the line and gets a needle point of its own. */
const KINK = (25 * Math.PI) / 180;

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
  private turn = new Float64Array(64);
  /** for each piece of the path, chords it asks for */
  private share = new Float64Array(64);
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
    this.turn = new Float64Array(n);
    this.share = new Float64Array(n);
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

  /** Arc lengths of needle points from `skip` mm after the start to `stop` mm before the end, both included. */
  chords(skip: number, stop: number): { readonly at: Float64Array; readonly count: number } {
    this.askChords();
    const { along, turn, n } = this;
    this.divisions.count = 0;
    const end = this.length - stop;
    let from = skip;
    let begin = 1;
    for (let i = 1; i < n; i++) {
      if (i < n - 1 && Math.abs(turn[i]) <= KINK) continue;
      const to = Math.min(end, along[i]);
      if (to - from > LEAST_CHORD || i === n - 1) {
        this.divide(begin, i, from, to);
        from = to;
        begin = i + 1;
      }
    }
    this.mark(end);
    return this.divisions;
  }

  /** How much each piece of the path bends, as the number of chords it asks for. */
  private askChords(): void {
    const { path, along, turn, share, n } = this;
    let heading = 0;
    turn[0] = 0;
    for (let i = 1, p = this.first; i < n; i++, p += 2) {
      const next = Math.atan2(path[p + 3] - path[p + 1], path[p + 2] - path[p]);
      if (i > 1) {
        let by = next - heading;
        if (by > Math.PI) by -= 2 * Math.PI;
        else if (by < -Math.PI) by += 2 * Math.PI;
        turn[i - 1] = by;
      }
      heading = next;
    }
    turn[n - 1] = 0;
    let before = 0;
    for (let i = 1; i < n; i++) {
      let after = 0;
      if (i < n - 1) {
        const by = Math.abs(turn[i]);
        after = by > KINK ? 0 : (2 * by) / (along[i + 1] - along[i - 1] || 1);
      }
      const bend = Math.max(before, after);
      before = after;
      const chord =
        bend > 0 ? Math.min(CHORD, Math.max(LEAST_CHORD, Math.sqrt((8 * SAGITTA) / bend))) : CHORD;
      share[i] = 1 / chord;
    }
  }

  /** Chords between two arc lengths within pieces `begin` to `last`, the end left out: each takes its share of how much they bend. */
  private divide(begin: number, last: number, from: number, to: number): void {
    const { along, share } = this;
    let total = 0;
    for (let i = begin; i <= last; i++) {
      total += Math.max(0, Math.min(to, along[i]) - Math.max(from, along[i - 1])) * share[i];
    }
    const chords = Math.max(1, Math.ceil(total - 0.05));
    const each = total / chords;
    let k = 0;
    let sum = 0;
    for (let i = begin; i <= last && k < chords; i++) {
      const a = Math.max(from, along[i - 1]);
      const own = (Math.min(to, along[i]) - a) * share[i];
      if (own <= 0) continue;
      while (k < chords && k * each <= sum + own) {
        this.mark(a + (k * each - sum) / share[i]);
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
