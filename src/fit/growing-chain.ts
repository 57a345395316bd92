import { float32s, float64s, int32s, uint8s, uint16s } from '../geometry/flat.js';
import type { LegKind, Unit, UnitLeg } from '../stitches/stitch.js';
import type { Chain } from './fit.js';

/** How much a chain will hold at the most. */
export interface Room {
  readonly nodes: number;
  readonly legs: number;
  readonly points: number;
}

/** How many nodes and legs a chain holds at some time. */
export interface Grown {
  readonly nodes: number;
  readonly legs: number;
}

/** A pick-up's fold lies this share of the way from the crossing to the edge: no needle point pins the crossing. */
const BESIDE_CROSSING = 0.12;

/** Where the straights from a to b and from c to d cross, node numbers given; null when they do not. */
function crossing(nodes: Float64Array, a: number, b: number, c: number, d: number): [number, number] | null {
  const [ax, ay, cx, cy] = [nodes[2 * a], nodes[2 * a + 1], nodes[2 * c], nodes[2 * c + 1]];
  const [bx, by] = [nodes[2 * b] - ax, nodes[2 * b + 1] - ay];
  const [dx, dy] = [nodes[2 * d] - cx, nodes[2 * d + 1] - cy];
  const sine = bx * dy - by * dx;
  if (Math.abs(sine) < 1e-9) return null;
  const t = ((cx - ax) * dy - (cy - ay) * dx) / sine;
  const s = ((cx - ax) * by - (cy - ay) * bx) / sine;
  return t > 0 && t < 1 && s > 0 && s < 1 ? [ax + t * bx, ay + t * by] : null;
}

/** The arrays of a chain while it grows; room is known beforehand. */
export class GrowingChain {
  private readonly nodes: Float64Array;
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private readonly legClass: Uint16Array;
  private readonly unit: Int32Array;
  private readonly passes: Uint8Array;
  private readonly kind: LegKind[] = [];
  private readonly sizes: Float32Array;
  private readonly pathStart: Int32Array;
  private readonly path: Float64Array;
  private nodeCount = 0;
  private legCount = 0;
  private pointCount = 0;

  constructor(room: Room) {
    this.nodes = float64s(2 * room.nodes);
    this.from = int32s(room.legs);
    this.to = int32s(room.legs);
    this.legClass = uint16s(room.legs);
    this.unit = int32s(room.legs);
    this.passes = uint8s(room.legs);
    this.sizes = float32s(room.legs);
    this.pathStart = int32s(room.legs + 1);
    this.path = float64s(2 * room.points);
  }

  table(unit: Unit): Int32Array {
    return int32s(unit.nodes.length / 2).fill(-1);
  }

  addNode(x: number, y: number): number {
    this.nodes[2 * this.nodeCount] = x;
    this.nodes[2 * this.nodeCount + 1] = y;
    return this.nodeCount++;
  }

  startLeg(from: number, to: number, leg: UnitLeg, unit: number, passes: number): void {
    const i = this.legCount++;
    this.from[i] = from;
    this.to[i] = to;
    this.legClass[i] = leg.class;
    this.unit[i] = unit;
    this.passes[i] = passes;
    this.kind.push(leg.kind);
    this.sizes[i] = leg.size;
    this.pathStart[i] = this.pointCount;
    this.pathStart[i + 1] = this.pointCount;
  }

  addPoint(x: number, y: number): void {
    this.path[2 * this.pointCount] = x;
    this.path[2 * this.pointCount + 1] = y;
    this.pathStart[this.legCount] = ++this.pointCount;
  }

  addNodePoint(node: number): void {
    this.addPoint(this.nodes[2 * node], this.nodes[2 * node + 1]);
  }

  /**
   * Moves the last leg's curve so that its ends are on its nodes, the difference fading along it. A shared node lies
   * where the unit before laid it, which may differ a little from where this unit's own frame has it (another length,
   * another side of a corner).
   *
   * @param x0 where the leg's own frame has its start, and x1, y1 its end
   */
  settleEnds(x0: number, y0: number, x1: number, y1: number): void {
    const i = this.legCount - 1;
    const a = this.pathStart[i];
    const b = this.pathStart[i + 1] - 1;
    const path = this.path;
    const dx0 = path[2 * a] - x0;
    const dy0 = path[2 * a + 1] - y0;
    const dx1 = path[2 * b] - x1;
    const dy1 = path[2 * b + 1] - y1;
    if (Math.abs(dx0) + Math.abs(dy0) + Math.abs(dx1) + Math.abs(dy1) < 1e-9) return;
    for (let k = a + 1; k < b; k++) {
      const t = (k - a) / (b - a);
      path[2 * k] += (1 - t) * dx0 + t * dx1;
      path[2 * k + 1] += (1 - t) * dy0 + t * dy1;
    }
  }

  /** How much it holds so far. */
  get size(): Grown {
    return { nodes: this.nodeCount, legs: this.legCount };
  }

  /**
   * Lays a unit as one that was laid before, moved: its legs are `legs.from` up to `legs.to`, its own nodes `nodes.from`
   * up to `nodes.to`, and it shares nodes with the unit before it as that one did with the unit before it.
   */
  again(from: Grown, to: Grown, dx: number, dy: number, unit: number): void {
    const shift = this.nodeCount - from.nodes;
    for (let node = from.nodes; node < to.nodes; node++) {
      this.addNode(this.nodes[2 * node] + dx, this.nodes[2 * node + 1] + dy);
    }
    for (let leg = from.legs; leg < to.legs; leg++) {
      const i = this.legCount++;
      this.from[i] = this.from[leg] + shift;
      this.to[i] = this.to[leg] + shift;
      this.legClass[i] = this.legClass[leg];
      this.unit[i] = unit;
      this.passes[i] = this.passes[leg];
      this.kind.push(this.kind[leg]);
      this.sizes[i] = this.sizes[leg];
      this.pathStart[i] = this.pointCount;
      const end = 2 * this.pathStart[leg + 1];
      let at = 2 * this.pointCount;
      for (let k = 2 * this.pathStart[leg]; k < end; k += 2) {
        this.path[at++] = this.path[k] + dx;
        this.path[at++] = this.path[k + 1] + dy;
      }
      this.pointCount = at / 2;
      this.pathStart[i + 1] = this.pointCount;
      if (this.kind[i] === 'straight') this.hidePickUp();
    }
  }

  /**
   * After a straight leg: where it crosses the straight before the last one, and a pick-up leads from that one's end to
   * its own start, the pick-up is folded to just beside the crossing, so that both its halves hide beneath the two. Taut
   * thread crosses elsewhere on a bend or a slant than on a plain seam, so this waits until both are laid.
   */
  hidePickUp(): void {
    this.hideUnder(this.legCount - 3, this.legCount - 2, this.legCount - 1);
  }

  private hideUnder(first: number, under: number, last: number): void {
    if (first < 0 || this.kind[first] !== 'straight' || this.kind[under] !== 'under') return;
    if (this.to[first] !== this.from[under] || this.to[under] !== this.from[last]) return;
    if (this.pathStart[under + 1] - this.pathStart[under] !== 3) return;
    const [a, b, c, d] = [this.from[first], this.to[first], this.from[last], this.to[last]];
    const at = crossing(this.nodes, a, b, c, d);
    if (!at) return;
    const middle = this.pathStart[under] + 1;
    for (const k of [0, 1]) {
      const edge = (this.nodes[2 * b + k] + this.nodes[2 * c + k]) / 2;
      this.path[2 * middle + k] = at[k] + BESIDE_CROSSING * (edge - at[k]);
    }
  }

  finish(units: number, closed: boolean): Chain {
    // On a ring the last pick-up leads to the first leg.
    if (closed) this.hideUnder(this.legCount - 2, this.legCount - 1, 0);
    return {
      units,
      closed,
      nodes: this.nodes.subarray(0, 2 * this.nodeCount),
      from: this.from,
      to: this.to,
      legClass: this.legClass,
      unit: this.unit,
      passes: this.passes,
      kind: this.kind,
      size: this.sizes,
      pathStart: this.pathStart,
      path: this.path,
    };
  }
}
