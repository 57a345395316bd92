import type { Chain } from '../../src/fit/fit.js';
import type { Craft } from '../../src/needle/run.js';
import type { LegKind } from '../../src/stitches/stitch.js';

export const craft: Craft = { threadWidth: 0.4, longest: 7, shortest: 0.8, holeLimit: 6, spread: 0.22 };

type Spot = readonly [number, number];

/** Builds a chain leg by leg; equal spots are one node. */
export class ChainMaker {
  private readonly nodes: Spot[] = [];
  private readonly legs: {
    from: number;
    to: number;
    kind: LegKind;
    passes: number;
    class: number;
    unit: number;
    size: number;
    path: Spot[];
  }[] = [];

  private readonly names = new Map<string, number>();

  node([x, y]: Spot): number {
    const name = `${Math.round(x * 1e6)},${Math.round(y * 1e6)}`;
    if (!this.names.has(name)) {
      this.names.set(name, this.nodes.length);
      this.nodes.push([x, y]);
    }
    return this.names.get(name)!;
  }

  leg(unit: number, cls: number, kind: LegKind, passes: number, path: Spot[], size = 0): this {
    const from = this.node(path[0]);
    const to = this.node(path[path.length - 1]);
    this.legs.push({ from, to, kind, passes, class: cls, unit, size, path });
    return this;
  }

  chain(closed = false): Chain {
    const { legs } = this;
    const pathStart = new Int32Array(legs.length + 1);
    legs.forEach((leg, i) => {
      pathStart[i + 1] = pathStart[i] + leg.path.length;
    });
    return {
      units: legs.reduce((most, leg) => Math.max(most, leg.unit + 1), 0),
      closed,
      nodes: Float64Array.from(this.nodes.flat()),
      from: Int32Array.from(legs, (leg) => leg.from),
      to: Int32Array.from(legs, (leg) => leg.to),
      legClass: Uint16Array.from(legs, (leg) => leg.class),
      unit: Int32Array.from(legs, (leg) => leg.unit),
      passes: Uint8Array.from(legs, (leg) => leg.passes),
      kind: legs.map((leg) => leg.kind),
      size: Float32Array.from(legs, (leg) => leg.size),
      pathStart,
      path: Float64Array.from(legs.flatMap((leg) => leg.path.flat())),
    };
  }
}

/** A bow from a to b that stands `rise` mm off its chord. */
export function bow(a: Spot, b: Spot, rise: number, points = 13): Spot[] {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.hypot(dx, dy);
  return Array.from({ length: points }, (_, i) => {
    if (i === 0) return a;
    if (i === points - 1) return b;
    const t = i / (points - 1);
    const v = (4 * t * (1 - t) * rise) / length;
    return [a[0] + dx * t + dy * v, a[1] + dy * t - dx * v];
  });
}

/** Open herringbone (Day and Buckle 1900, illus. 20 A): diagonals of two pick-ups' run, the pick-up taken backwards under the cloth. */
export function herringbone(units: number, passes = 3, p = 4, h = 8): Chain {
  const maker = new ChainMaker();
  for (let i = 0; i < units; i++) {
    const x = 2 * p * i;
    maker
      .leg(i, 0, 'straight', passes, [
        [x, 0],
        [x + 2 * p, h],
      ])
      .leg(i, 1, 'under', 0, [
        [x + 2 * p, h],
        [x + p, h],
      ])
      .leg(i, 2, 'straight', passes, [
        [x + p, h],
        [x + 3 * p, 0],
      ])
      .leg(i, 3, 'under', 0, [
        [x + 3 * p, 0],
        [x + 2 * p, 0],
      ]);
  }
  return maker.chain();
}

/** Feather: a zigzag spine, with an arm from each of its points to alternate sides. */
export function feather(units: number, passes = 3): Chain {
  const maker = new ChainMaker();
  for (let i = 0; i < units; i++) {
    const side = i % 2 ? -1 : 1;
    const a: Spot = [4 * i, side * 1.5];
    const b: Spot = [4 * (i + 1), -side * 1.5];
    const tip: Spot = [4 * i, -side * 5];
    maker.leg(i, 0, 'curve', passes, bow(tip, b, side * 0.8)).leg(i, 1, 'curve', passes, bow(a, b, 0.4));
  }
  return maker.chain();
}

/** Blanket: a heading edge and an upright at every step of it. */
export function blanket(units: number, passes = 3, pitch = 4): Chain {
  const maker = new ChainMaker();
  for (let i = 0; i < units; i++) {
    const x = pitch * i;
    maker
      .leg(i, 0, 'straight', passes, [
        [x, 0],
        [x, 6],
      ])
      .leg(i, 1, 'straight', passes, [
        [x, 0],
        [x + pitch, 0],
      ]);
  }
  return maker.chain();
}

/** Fly in a column: two arms that meet at the anchor, a holding stitch, and under-legs to the next. */
export function fly(units: number, passes = 3): Chain {
  const maker = new ChainMaker();
  for (let i = 0; i < units; i++) {
    const x = 6 * i;
    maker
      .leg(i, 0, 'curve', passes, bow([x, 3], [x + 3, 0], 0.5))
      .leg(i, 0, 'curve', passes, bow([x, -3], [x + 3, 0], -0.5))
      .leg(i, 1, 'straight', passes, [
        [x + 3, 0],
        [x + 5, 0],
      ])
      .leg(i, 2, 'under', 0, [
        [x + 5, 0],
        [x + 6, 3],
      ]);
  }
  return maker.chain();
}

/** Two rails with a rung between them in every unit: units share two nodes. */
export function ladder(units: number, passes: readonly [number, number, number] = [3, 3, 3]): Chain {
  const maker = new ChainMaker();
  for (let i = 0; i < units; i++) {
    const x = 3 * i;
    maker
      .leg(i, 0, 'straight', passes[0], [
        [x, 0],
        [x, 4],
      ])
      .leg(i, 1, 'straight', passes[1], [
        [x, 0],
        [x + 3, 0],
      ])
      .leg(i, 2, 'straight', passes[2], [
        [x, 4],
        [x + 3, 4],
      ]);
  }
  return maker.chain();
}

/** A ring of outward arms on a round line. */
export function ring(units: number, passes = 3): Chain {
  const maker = new ChainMaker();
  const at = (i: number, r: number): Spot => {
    const angle = (2 * Math.PI * (i % units)) / units;
    return [r * Math.cos(angle), r * Math.sin(angle)];
  };
  const r = (units * 4) / (2 * Math.PI);
  for (let i = 0; i < units; i++) {
    maker
      .leg(i, 0, 'straight', passes, [at(i, r), at(i, r + 5)])
      .leg(i, 1, 'straight', passes, [at(i, r), at(i + 1, r)]);
  }
  return maker.chain(true);
}

/** Detached sprigs of three looped petals, each held by a small stitch. */
export function sprigs(units: number, passes = 2): Chain {
  const maker = new ChainMaker();
  for (let i = 0; i < units; i++) {
    const base: Spot = [14 * i, 0];
    [-0.9, 0, 0.9].forEach((angle, petal) => {
      const out: Spot = [Math.sin(angle), -Math.cos(angle)];
      const tip: Spot = [base[0] + 5 * out[0], base[1] + 5 * out[1]];
      const end: Spot = [base[0] + 6.3 * out[0], base[1] + 6.3 * out[1]];
      maker
        .leg(i, 2 * petal, 'loop', passes, bow(base, tip, 0.9))
        .leg(i, 2 * petal, 'loop', passes, bow(tip, base, 0.9))
        .leg(i, 2 * petal + 1, 'straight', passes, [tip, end]);
    });
  }
  return maker.chain();
}
