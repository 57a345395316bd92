import type { UnitLeg } from '../stitches/stitch.js';

/** Lengths that differ by less are the same to the eye in so small a figure, mm. */
export const SAME = 0.35;

/** How far legs reach along their line and across it, mm. */
export interface Box {
  readonly first: number;
  readonly last: number;
  readonly least: number;
  readonly most: number;
}

/** Of some legs, knots and satin in all their width. */
export function boxOf(legs: readonly UnitLeg[]): Box {
  let [first, last, least, most] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { path, size } of legs) {
    for (let i = 0; i < path.length; i += 2) {
      first = Math.min(first, path[i] - size / 2);
      last = Math.max(last, path[i] + size / 2);
      least = Math.min(least, path[i + 1] - size / 2);
      most = Math.max(most, path[i + 1] + size / 2);
    }
  }
  return { first, last, least, most };
}

/** Along the line, mm. */
export const lengthOf = ({ first, last }: Box): number => last - first;

/** Across it, mm. */
export const acrossOf = ({ least, most }: Box): number => most - least;
