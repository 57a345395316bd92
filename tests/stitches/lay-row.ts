import type { LegKind, Unit, UnitLeg } from '../../src/stitches/stitch.js';
import { mirrored } from '../../src/stitches/symmetry.js';

export interface LaidLeg {
  readonly name: string;
  readonly kind: LegKind;
  readonly unit: number;
  readonly from: number;
  readonly to: number;
  readonly thread: number;
  /** knot, petal, cord: how wide; else 0 */
  readonly size: number;
  /** u, v along the whole row */
  readonly xy: readonly (readonly [number, number])[];
}

/**
 * A row of units on a straight line, in the order a hand works them, the closing and ending legs last. Node i of unit k has the
 * number k * nodes + i, unless it is joined to a node of the unit before.
 */
export function layRow(unit: Unit, glide: boolean, count: number): LaidLeg[] {
  const hands = [unit, glide ? mirrored(unit) : unit];
  const size = unit.nodes.length / 2;
  const number = (k: number, node: number): number => {
    const join = k > 0 ? unit.joins.find(([, here]) => here === node) : undefined;
    return join ? number(k - 1, join[0]) : k * size + node;
  };
  const laid = (leg: UnitLeg, k: number): LaidLeg => ({
    name: leg.name,
    kind: leg.kind,
    unit: k,
    from: number(k, leg.from),
    to: number(k, leg.to),
    thread: leg.thread,
    size: leg.size,
    xy: Array.from({ length: leg.path.length / 2 }, (_, i) => [
      leg.path[2 * i] + k * unit.length,
      leg.path[2 * i + 1],
    ]),
  });
  const row: LaidLeg[] = [];
  for (let k = 0; k < count; k++) for (const leg of hands[k % 2].legs) row.push(laid(leg, k));
  const after = hands[count % 2];
  for (const index of unit.closing) row.push(laid(after.legs[index], count));
  for (const leg of after.ending) row.push(laid(leg, count));
  return row;
}
