import { copied, int32s } from '../geometry/flat.js';
import { NEARLY_STRAIGHT } from './legs.js';
import type { Runs } from './run.js';

/** No stitch is shorter than this, ties excepted: shorter ones pile thread up in one spot. */
export const SHORTEST_EVER = 0.4;
const TOO_NEAR = SHORTEST_EVER ** 2 - 1e-9;

/** Points in a line, with the direction in which each may be moved. */
interface Line {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
}

/** How far (px, py) lies from the line through (x, y) along (dx, dy). */
const strayFrom = (x: number, y: number, dx: number, dy: number, px: number, py: number): number =>
  Math.abs(dx * (py - y) - dy * (px - x)) / Math.sqrt(dx * dx + dy * dy);

/** Needle points as they are sewn, in a buffer that grows. */
export class NeedlePoints {
  xy = new Float64Array(1024);
  count = 0;
  private starts: number[] = [];

  /** Forgets all runs. */
  begin(): void {
    this.count = 0;
    this.starts = [];
  }

  /** where the needle stands */
  get x(): number {
    return this.xy[2 * this.count - 2];
  }

  get y(): number {
    return this.xy[2 * this.count - 1];
  }

  /** first point of the run being sewn */
  get runStart(): number {
    return this.starts[this.starts.length - 1];
  }

  beginRun(x: number, y: number): void {
    this.starts.push(this.count);
    this.put(x, y);
  }

  /** Pierces at x, y, unless that is too near to where the needle stands. */
  sew(x: number, y: number): void {
    const dx = x - this.xy[2 * this.count - 2];
    const dy = y - this.xy[2 * this.count - 1];
    if (dx * dx + dy * dy < TOO_NEAR) return;
    this.put(x, y);
  }

  /**
   * Pierces at the end of what was sewn from point `from` on, which others may share; inner points too near to it give way.
   */
  arrive(x: number, y: number, from: number): void {
    while (this.count - 1 > from) {
      const dx = x - this.x;
      const dy = y - this.y;
      if (dx * dx + dy * dy >= TOO_NEAR) break;
      this.count--;
    }
    this.sew(x, y);
  }

  /** Pierces at points `first` up to `last` of x, y, or down to it, each moved `apart` times by (nx, ny). */
  sewAlong({ x, y, nx, ny }: Line, first: number, last: number, apart: number): void {
    const step = last < first ? -1 : 1;
    while (2 * this.count + 2 * (Math.abs(last - first) + 1) > this.xy.length) this.grow();
    const { xy } = this;
    let at = 2 * this.count;
    let px = xy[at - 2];
    let py = xy[at - 1];
    for (let i = first; i !== last + step; i += step) {
      const qx = x[i] + nx[i] * apart;
      const qy = y[i] + ny[i] * apart;
      if ((qx - px) * (qx - px) + (qy - py) * (qy - py) < TOO_NEAR) continue;
      xy[at++] = px = qx;
      xy[at++] = py = qy;
    }
    this.count = at / 2;
  }

  /**
   * Of a curve sewn from point `from` on, leaves out the inner point next to either end where it lies nearer to that end than
   * the shortest stitch and the thread strays too little without it to be seen: the hole of an end is not always where the
   * curve was divided for.
   */
  thinEnds(from: number, shortest: number): void {
    const last = this.count - 1;
    if (last - from >= 2 && this.isNear(last - 1, last, shortest) && this.isOnLine(last - 1, last - 2, last))
      this.replace(last - 1, last, []);
    if (
      this.count - 1 - from >= 2 &&
      this.isNear(from, from + 1, shortest) &&
      this.isOnLine(from + 1, from, from + 2)
    )
      this.replace(from + 1, from + 2, []);
  }

  private isNear(i: number, j: number, shortest: number): boolean {
    const { xy } = this;
    const dx = xy[2 * j] - xy[2 * i];
    const dy = xy[2 * j + 1] - xy[2 * i + 1];
    return dx * dx + dy * dy < (shortest - 1e-9) ** 2;
  }

  private isOnLine(i: number, a: number, b: number): boolean {
    const { xy } = this;
    const x = xy[2 * a];
    const y = xy[2 * a + 1];
    return strayFrom(x, y, xy[2 * b] - x, xy[2 * b + 1] - y, xy[2 * i], xy[2 * i + 1]) < NEARLY_STRAIGHT;
  }

  /** Pierces at x, y in any case; for ties. */
  put(x: number, y: number): void {
    if (2 * this.count === this.xy.length) this.grow();
    this.xy[2 * this.count] = x;
    this.xy[2 * this.count + 1] = y;
    this.count++;
  }

  private grow(): void {
    const more = new Float64Array(2 * this.xy.length);
    more.set(this.xy);
    this.xy = more;
  }

  /** Puts points x0 y0 ... in the place of points `from` to `to` (exclusive). */
  replace(from: number, to: number, points: readonly number[]): void {
    const count = this.count + from - to + points.length / 2;
    while (2 * count > this.xy.length) this.grow();
    this.xy.copyWithin(2 * from + points.length, 2 * to, 2 * this.count);
    this.xy.set(points, 2 * from);
    this.count = count;
  }

  /** A run of a single point is no run. */
  dropRunIfEmpty(): void {
    if (this.count - this.runStart > 1) return;
    this.count = this.runStart;
    this.starts.pop();
  }

  runs(): Runs {
    const start = int32s(this.starts.length + 1);
    start.set(this.starts);
    start[this.starts.length] = this.count;
    return { xy: copied(this.xy.subarray(0, 2 * this.count)), start };
  }
}
