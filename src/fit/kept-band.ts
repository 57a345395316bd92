import type { GuideLine } from '../geometry/guide-line.js';
import type { Band, Reach } from './band.js';
import type { Kept } from './keep-clear.js';
import { level } from './reach.js';

/** A part of a line that an area keeps bare, from and to in its u. */
export interface KeptPart {
  readonly from: number;
  readonly to: number;
  /** index into the areas */
  readonly area: number;
  /** the area covers the line itself there: no size of the treatment would go on */
  readonly covered: boolean;
}

/**
 * How far a treatment can reach beside areas that are kept clear, changing at most 1 in 4, and the parts where it would
 * get less than `share` of what it wants and is cut off instead. Up to these parts it keeps what it has there: it ends,
 * and need not dwindle first.
 */
export function bandBesideKept(
  kept: Kept,
  guide: GuideLine,
  wanted: Reach,
  share: number,
): { readonly band: Band; readonly cut: readonly KeptPart[] } {
  const { u, covers, nearest } = kept;
  const isCut = (i: number) =>
    covers[i] >= 0 || kept.left[i] < share * wanted.left || kept.right[i] < share * wanted.right;
  const left = kept.left.map((most, i) => (isCut(i) ? wanted.left : Math.min(wanted.left, most)));
  const right = kept.right.map((most, i) => (isCut(i) ? wanted.right : Math.min(wanted.right, most)));
  level(u, left, guide.closed);
  level(u, right, guide.closed);
  const cut: KeptPart[] = [];
  for (let i = 0; i < u.length; i++) {
    if (!isCut(i)) continue;
    const from = u[Math.max(0, i - 1)];
    let [area, covered] = [-1, false];
    for (; i < u.length && isCut(i); i++) {
      if (covers[i] >= 0) [area, covered] = [covers[i], true];
      else if (area < 0) area = nearest[i];
    }
    cut.push({ from, to: u[Math.min(u.length - 1, i)], area, covered });
  }
  return { band: { u, left, right }, cut };
}
