import type { Unit, UnitLeg } from '../stitches/stitch.js';
import type { Chain, Facing } from './fit.js';

/** Where a free-standing figure stands on the cloth, in mm, and where its u points; v points to the left of that. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly theta: number;
  /** -1 for its mirror image, u running the other way; as built when not given */
  readonly hand?: 1 | -1;
}

/** Visible passes of a leg that has this share of a row's weight. */
export const passesOf = (passes: number, share: number): number =>
  share > 0 ? Math.max(1, Math.round(passes * share)) : 0;

/** A figure laid stiffly at a spot, as it was built: one chain of one unit. */
export function ornamentChain(unit: Unit, { x, y, theta, hand = 1 }: Spot, passes: number): Chain {
  const sin = Math.sin(theta);
  const cos = Math.cos(theta);
  const laid = (line: Float64Array): Float64Array => {
    const out = new Float64Array(line.length);
    for (let i = 0; i < line.length; i += 2) {
      const [u, v] = [hand * line[i], line[i + 1]];
      out[i] = x + u * cos + v * sin;
      out[i + 1] = y + u * sin - v * cos;
    }
    return out;
  };
  const { legs } = unit;
  const numbers = (value: (leg: UnitLeg) => number) => legs.map(value);
  const pathStart = new Int32Array(legs.length + 1);
  legs.forEach((leg, i) => {
    pathStart[i + 1] = pathStart[i] + leg.path.length / 2;
  });
  const path = new Float64Array(2 * pathStart[legs.length]);
  legs.forEach((leg, i) => {
    path.set(laid(leg.path), 2 * pathStart[i]);
  });
  const facing: Facing = { theta: hand === 1 ? theta : theta + Math.PI, hand };
  return {
    units: 1,
    closed: false,
    nodes: laid(unit.nodes),
    from: Int32Array.from(numbers((leg) => leg.from)),
    to: Int32Array.from(numbers((leg) => leg.to)),
    legClass: Uint16Array.from(numbers((leg) => leg.class)),
    unit: new Int32Array(legs.length),
    passes: Uint8Array.from(numbers((leg) => passesOf(passes, leg.share))),
    kind: legs.map((leg) => leg.kind),
    size: Float32Array.from(numbers((leg) => leg.size)),
    pathStart,
    path,
    facing,
  };
}
