import type { Chain } from '../fit/fit.js';

/** A vertex that turns more is a kink of the line and gets a needle point of its own. */
const KINK = Math.cos((45 * Math.PI) / 180);

/** The line of one leg by arc length, mm; buffers are reused from leg to leg. */
export class Spine {
  length = 0;
  /** arc lengths of the line's vertices, and how many there are */
  along = new Float64Array(64);
  n = 0;
  /** place and unit tangent after `goTo` */
  x = 0;
  y = 0;
  tx = 1;
  ty = 0;
  private path: Float64Array = new Float64Array(0);
  private first = 0;
  private cursor = 1;

  /** Takes up a leg. */
  measure({ path, pathStart }: Chain, leg: number): void {
    const first = pathStart[leg];
    const n = pathStart[leg + 1] - first;
    if (this.along.length < n) this.along = new Float64Array(2 * n);
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

  /** Writes of every vertex: arc length, squares of the distances from the first and the last; what no motion changes. */
  shape(into: Float64Array): void {
    for (let i = 0; i < this.n; i++) {
      into[3 * i] = this.along[i];
      into[3 * i + 1] = this.square(i, 0);
      into[3 * i + 2] = this.square(i, this.n - 1);
    }
  }

  /** Whether the line has the shape of another of as many vertices, but for differences up to `within`. */
  hasShape(shape: Float64Array, within: number): boolean {
    const { n, along } = this;
    if (Math.abs(along[n - 1] - shape[3 * n - 3]) > within) return false;
    for (let i = 1; i < n; i++) {
      if (
        Math.abs(along[i] - shape[3 * i]) > within ||
        Math.abs(this.square(i, 0) - shape[3 * i + 1]) > within ||
        Math.abs(this.square(i, n - 1) - shape[3 * i + 2]) > within
      )
        return false;
    }
    return true;
  }

  private square(i: number, j: number): number {
    const { path, first } = this;
    const dx = path[first + 2 * i] - path[first + 2 * j];
    const dy = path[first + 2 * i + 1] - path[first + 2 * j + 1];
    return dx * dx + dy * dy;
  }

  /** Moves to an arc length, quickest when it is a little beyond that before. */
  goTo(at: number): void {
    const { along, path } = this;
    while (this.cursor > 1 && along[this.cursor - 1] > at) this.cursor--;
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

  /** Whether the line turns sharply at an inner vertex. */
  isKink(i: number): boolean {
    const { path, along } = this;
    const p = this.first + 2 * i;
    const ux = path[p] - path[p - 2];
    const uy = path[p + 1] - path[p - 1];
    const vx = path[p + 2] - path[p];
    const vy = path[p + 3] - path[p + 1];
    return ux * vx + uy * vy < KINK * (along[i] - along[i - 1]) * (along[i + 1] - along[i]);
  }

  /** How much the line turns at the vertices between two arc lengths, radians, to either hand alike; kinks apart. */
  turnBetween(from: number, to: number): number {
    const { path, along, n } = this;
    let turn = 0;
    for (let i = 1, p = this.first + 2; i < n - 1; i++, p += 2) {
      if (along[i] <= from || along[i] >= to) continue;
      const ux = path[p] - path[p - 2];
      const uy = path[p + 1] - path[p - 1];
      const vx = path[p + 2] - path[p];
      const vy = path[p + 3] - path[p + 1];
      const product = (along[i] - along[i - 1]) * (along[i + 1] - along[i]);
      // the sine of so small a turn is the turn
      if (product > 0) turn += Math.abs(ux * vy - uy * vx) / product;
    }
    return turn;
  }

  /**
   * The furthest place from `at` toward `goal`, both arc lengths, to which a straight stitch strays at most `stray` mm from the
   * line. The directions that pass near enough to every vertex on the way form a wedge, which narrows (J. Sklansky and
   * V. Gonzalez, "Fast polygonal approximation of digitized curves", 1980; from memory).
   */
  reach(at: number, goal: number, stray: number): number {
    const { along, path, first } = this;
    this.goTo(at);
    const px = this.x;
    const py = this.y;
    const step = goal > at ? 1 : -1;
    // vertex `cursor` lies at or beyond `at`, the one before it before `at`
    let i = step > 0 ? this.cursor : this.cursor - 1;
    let wedge = false;
    // the sides of the wedge, and the place before
    let lx = 0;
    let ly = 0;
    let rx = 0;
    let ry = 0;
    let qx = 0;
    let qy = 0;
    let q = at;
    for (;;) {
      let v = along[i];
      let dx = path[first + 2 * i] - px;
      let dy = path[first + 2 * i + 1] - py;
      const there = step > 0 ? v >= goal : v <= goal;
      if (there && v !== q) {
        const t = (goal - q) / (v - q);
        dx = qx + (dx - qx) * t;
        dy = qy + (dy - qy) * t;
        v = goal;
      }
      if (wedge) {
        const left = dx * ly - dy * lx;
        const right = rx * dy - ry * dx;
        if (left < 0 || right < 0) {
          const before = left < 0 ? qx * ly - qy * lx : rx * qy - ry * qx;
          return q + ((v - q) * before) / (before - (left < 0 ? left : right));
        }
      }
      if (there) return goal;
      const square = dx * dx + dy * dy - stray * stray;
      if (square > 0) {
        const side = Math.sqrt(square);
        const ax = dx * side - dy * stray;
        const ay = dy * side + dx * stray;
        const bx = dx * side + dy * stray;
        const by = dy * side - dx * stray;
        if (!wedge || ax * ly - ay * lx > 0) {
          lx = ax;
          ly = ay;
        }
        if (!wedge || rx * by - ry * bx > 0) {
          rx = bx;
          ry = by;
        }
        wedge = true;
      }
      qx = dx;
      qy = dy;
      q = v;
      i += step;
    }
  }
}
