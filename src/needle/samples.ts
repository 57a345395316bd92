import type { Chain } from '../fit/fit.js';

/** A curve's needle points: chords of up to 1.2 mm, shorter where it bends, so that none strays 0.08 mm from the thread's line. */
const CHORD = 1.1;
const SAGITTA = 0.065;
/** Below this, chords pile up holes; a bend tighter than 0.3 mm is rounded instead. */
const LEAST_CHORD = 0.45;
/** A vertex that turns more is a kink of the line and gets a needle point of its own. */
const KINK = (25 * Math.PI) / 180;

/** Points along a path with unit tangents and the arc length at each, mm; buffers are reused from leg to leg. */
export class Samples {
  count = 0;
  length = 0;
  x = new Float64Array(64);
  y = new Float64Array(64);
  tx = new Float64Array(64);
  ty = new Float64Array(64);
  at = new Float64Array(64);
  private turn = new Float64Array(64);
  private along = new Float64Array(64);

  /** Needle points for a curved leg from `skip` mm after its start to `stop` mm before its end, both included. */
  curve(chain: Chain, leg: number, skip: number, stop: number): void {
    this.measure(chain, leg);
    const { path, pathStart } = chain;
    const first = pathStart[leg];
    const n = pathStart[leg + 1] - first;
    this.count = 0;
    const end = this.length - stop;
    let from = skip;
    for (let i = 1; i < n; i++) {
      const kink = i < n - 1 && Math.abs(this.turn[i]) > KINK;
      if (!kink && i < n - 1) continue;
      const to = Math.min(end, this.along[i]);
      if (to - from > LEAST_CHORD || i === n - 1) {
        this.piece(path, first, n, from, to);
        from = to;
      }
    }
    this.add(path, first, n, end);
  }

  /** `count` + 1 points evenly along the leg. */
  evenly(chain: Chain, leg: number, skip: number, stop: number, count: number): void {
    this.measure(chain, leg);
    const first = chain.pathStart[leg];
    const n = chain.pathStart[leg + 1] - first;
    this.count = 0;
    const span = this.length - skip - stop;
    for (let i = 0; i <= count; i++) this.add(chain.path, first, n, skip + (span * i) / count);
  }

  private measure(chain: Chain, leg: number): void {
    const { path, pathStart } = chain;
    const first = pathStart[leg];
    const n = pathStart[leg + 1] - first;
    if (this.turn.length < n) {
      this.turn = new Float64Array(2 * n);
      this.along = new Float64Array(2 * n);
    }
    this.along[0] = 0;
    this.turn[0] = 0;
    let heading = 0;
    for (let i = 1; i < n; i++) {
      const dx = path[2 * (first + i)] - path[2 * (first + i) - 2];
      const dy = path[2 * (first + i) + 1] - path[2 * (first + i) - 1];
      const next = Math.atan2(dy, dx);
      this.along[i] = this.along[i - 1] + Math.sqrt(dx * dx + dy * dy);
      if (i > 1) {
        let turn = next - heading;
        if (turn > Math.PI) turn -= 2 * Math.PI;
        else if (turn < -Math.PI) turn += 2 * Math.PI;
        this.turn[i - 1] = turn;
      }
      heading = next;
    }
    this.turn[n - 1] = 0;
    this.length = this.along[n - 1];
    this.cursor = 1;
  }

  /** Chords between two arc lengths, the end left out: each takes its share of how much the stretch bends. */
  private piece(path: Float64Array, first: number, n: number, from: number, to: number): void {
    let total = 0;
    for (let i = 1; i < n; i++) total += this.share(i, n, from, to);
    const chords = Math.max(1, Math.ceil(total - 0.05));
    let k = 0;
    let sum = 0;
    for (let i = 1; i < n && k < chords; i++) {
      const share = this.share(i, n, from, to);
      if (share === 0) continue;
      const a = Math.max(from, this.along[i - 1]);
      const b = Math.min(to, this.along[i]);
      while (k < chords && (k * total) / chords <= sum + share) {
        this.add(path, first, n, a + ((b - a) * ((k * total) / chords - sum)) / share);
        k++;
      }
      sum += share;
    }
  }

  /** How many chords segment i asks for, within an arc length window. */
  private share(i: number, n: number, from: number, to: number): number {
    const a = Math.max(from, this.along[i - 1]);
    const b = Math.min(to, this.along[i]);
    if (b <= a) return 0;
    const bend = Math.max(this.bend(i - 1, n), this.bend(i, n));
    const chord = bend > 0 ? Math.min(CHORD, Math.max(LEAST_CHORD, Math.sqrt((8 * SAGITTA) / bend))) : CHORD;
    return (b - a) / chord;
  }

  private bend(i: number, n: number): number {
    if (i === 0 || i === n - 1 || Math.abs(this.turn[i]) > KINK) return 0;
    return (2 * Math.abs(this.turn[i])) / (this.along[i + 1] - this.along[i - 1] || 1);
  }

  private cursor = 1;

  private add(path: Float64Array, first: number, n: number, at: number): void {
    if (this.count === this.x.length) this.grow();
    while (this.cursor < n - 1 && this.along[this.cursor] < at) this.cursor++;
    const i = this.cursor;
    const length = this.along[i] - this.along[i - 1];
    const dx = path[2 * (first + i)] - path[2 * (first + i) - 2];
    const dy = path[2 * (first + i) + 1] - path[2 * (first + i) - 1];
    const t = length > 0 ? (at - this.along[i - 1]) / length : 0;
    const c = this.count++;
    this.x[c] = path[2 * (first + i) - 2] + dx * t;
    this.y[c] = path[2 * (first + i) - 1] + dy * t;
    this.tx[c] = length > 0 ? dx / length : 1;
    this.ty[c] = length > 0 ? dy / length : 0;
    this.at[c] = at;
  }

  private grow(): void {
    for (const name of ['x', 'y', 'tx', 'ty', 'at'] as const) {
      const more = new Float64Array(2 * this[name].length);
      more.set(this[name]);
      this[name] = more;
    }
  }
}
