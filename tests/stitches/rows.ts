import fc from 'fast-check';
import type { Stitch, Unit, Values } from '../../src/stitches/stitch.js';
import { type LaidLeg, layRow } from './lay-row.js';

/** Holds for units of a stitch at any values in its own ranges. */
export function always(stitch: Stitch, holds: (unit: Unit, values: Record<string, number>) => void): void {
  const anyValues = fc.record(
    Object.fromEntries(
      stitch.parameters.map(({ name, unit, min, max }) => [
        name,
        unit === 'count'
          ? fc.integer({ min, max })
          : fc.double({ min, max, noNaN: true, noDefaultInfinity: true }),
      ]),
    ),
  );
  fc.assert(
    fc.property(anyValues, (values) => holds(stitch.build(values), values as Record<string, number>)),
    { numRuns: 60 },
  );
}

/** A straight row of so many units, as a hand works it. */
export const row = (stitch: Stitch, count: number, values: Values = {}): LaidLeg[] =>
  layRow(stitch.build(values), stitch.symmetry === 'glide', count);

export const legsNamed = (legs: readonly LaidLeg[], name: string): LaidLeg[] =>
  legs.filter((leg) => leg.name === name);

export const first = (leg: LaidLeg): readonly [number, number] => leg.xy[0];
export const last = (leg: LaidLeg): readonly [number, number] => leg.xy[leg.xy.length - 1];

/** Where a leg crosses the seam, as places along it; ends that lie in the seam do not count. */
export function crossesSeam({ xy }: LaidLeg): number[] {
  return xy.slice(1).flatMap(([u, v], i) => {
    const [pu, pv] = xy[i];
    if (v === 0 && i + 2 < xy.length && pv * xy[i + 2][1] < 0) return [u];
    return pv * v < 0 ? [pu + ((u - pu) * pv) / (pv - v)] : [];
  });
}
