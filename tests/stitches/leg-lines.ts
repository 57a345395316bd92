import type { UnitLeg } from '../../src/stitches/stitch.js';
import { endsOf } from './dictionary.js';

/** u, v */
export type At = readonly [number, number];

/** Legs of a name, its copies included, in the order of work. */
export const called = <T extends { readonly name: string }>(legs: readonly T[], ...names: string[]): T[] =>
  legs.filter(({ name }) => names.includes(name.replace(/\[\d+\]$/, '')));

/** From end to end. */
export const lengthOf = (leg: UnitLeg): number => {
  const [[au, av], [bu, bv]] = endsOf(leg);
  return Math.hypot(bu - au, bv - av);
};
export const middleOf = (leg: UnitLeg): At => {
  const half = 2 * Math.floor(leg.path.length / 4);
  return [leg.path[half], leg.path[half + 1]];
};
/** How far a place lies to the left hand of the straight line from a to b. */
export const asideOf = ([au, av]: At, [bu, bv]: At, [u, v]: At): number =>
  ((bu - au) * (v - av) - (bv - av) * (u - au)) / Math.hypot(bu - au, bv - av);
/** Whether two legs, as broken lines, cross between their ends. */
export function cross(a: readonly At[], b: readonly At[]): boolean {
  const opposite = (p: At, q: At, r: At, s: At) => asideOf(p, q, r) * asideOf(p, q, s) < -1e-12;
  return a
    .slice(1)
    .some((q, i) => b.slice(1).some((s, j) => opposite(a[i], q, b[j], s) && opposite(b[j], s, a[i], q)));
}
/** From a place to each piece of a broken line. */
export const distances = (line: readonly At[], [u, v]: At): number[] =>
  line.slice(1).map(([bu, bv], i) => {
    const [du, dv] = [bu - line[i][0], bv - line[i][1]];
    const along = ((u - line[i][0]) * du + (v - line[i][1]) * dv) / (du * du + dv * dv);
    const t = Math.min(1, Math.max(0, along));
    return Math.hypot(u - line[i][0] - t * du, v - line[i][1] - t * dv);
  });
export const pathOf = ({ path }: UnitLeg): At[] =>
  Array.from({ length: path.length / 2 }, (_, i) => [path[2 * i], path[2 * i + 1]] as const);
