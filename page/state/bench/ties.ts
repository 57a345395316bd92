import { withoutIndex } from '../../../src/stitches/copies.js';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';

/** Where a point of the unit lies at the sizes shown; copies are `tip[0]`, `tip[1]`, ... */
export interface Spot {
  readonly name: string;
  readonly u: number;
  readonly v: number;
}

/** How a point goes along with another that is moved: across by as much, by as much the other way, or not at all. */
export type Ties = ReadonlyMap<string, -1 | 0 | 1>;

/** Points that mirror each other lie so near to it, mm. */
const SAME = 1e-6;

/**
 * The points that move with one, itself among them: a hole that is a hole of the next unit too (in a glide there with left
 * and right exchanged), and where a stitch is alike to both hands, the point across. What would have to go both ways at
 * once stays on the line it is on.
 */
export function tiesOf(record: StitchRecord, spots: readonly Spot[], name: string): Ties {
  const hand = record.symmetry === 'glide' ? -1 : 1;
  const pairs: (readonly [string, string, -1 | 1])[] = Object.entries(record.joins).map(([here, next]) => [
    withoutIndex(here),
    withoutIndex(next),
    hand,
  ]);
  if (record.symmetry === 'mirror') pairs.push(...mirrored(spots));
  const ties = new Map<string, -1 | 0 | 1>([[name, 1]]);
  const waiting = [name];
  let isTorn = false;
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    for (const [a, b, sign] of pairs) {
      if (a !== at && b !== at) continue;
      const other = a === at ? b : a;
      const wanted = (ties.get(at)! * sign) as -1 | 1;
      const is = ties.get(other);
      if (is === undefined) {
        ties.set(other, wanted);
        waiting.push(other);
      } else if (is !== wanted) isTorn = true;
    }
  }
  return isTorn ? new Map([...ties.keys()].map((key) => [key, 0])) : ties;
}

function mirrored(spots: readonly Spot[]): (readonly [string, string, -1])[] {
  return spots.flatMap(({ name, u, v }) => {
    const across = spots.find((other) => Math.abs(other.u - u) < SAME && Math.abs(other.v + v) < SAME);
    return across ? [[withoutIndex(name), withoutIndex(across.name), -1] as const] : [];
  });
}
