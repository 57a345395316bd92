import type { Arithmetic, StitchRecord } from '../../../src/stitches/stitch-record.js';

/** A share of one of the stitch's own measures, and nothing else: `width * 0.5`. */
const SHARE = /^(length|width) \* (-?\d+(?:\.\d+)?)$/;
/** Arithmetic with a distance added behind it. */
const WITH_DISTANCE = /^(.*[^\s*/^+(,-])\s+([+-])\s+(\d+(?:\.\d+)?)$/;
/** Digits kept of a distance in mm, and of a share. */
const FINE = 1e4;
const FINEST = 1e6;

const rounded = (value: number, digits: number): number => {
  const whole = Math.round(value * digits) / digits;
  return whole === 0 ? 0 : whole;
};

/** How long a unit and how wide a stitch is at its usual sizes, mm. */
export function usualSizes({ parameters, symmetry }: StitchRecord): { length: number; width: number } {
  const repeat = parameters.repeat?.default ?? 1;
  return { length: symmetry === 'glide' ? repeat / 2 : repeat, width: parameters.width?.default ?? 1 };
}

export type Sizes = ReturnType<typeof usualSizes>;

/**
 * A quantity larger by a distance at every size: what was written stays, and the distance is added behind it. Distances
 * added one after the other are one.
 */
export function plusDistance(written: Arithmetic, by: number): Arithmetic {
  if (typeof written === 'number') return rounded(written + by, FINE);
  const plain = Number(written);
  if (written.trim() !== '' && Number.isFinite(plain)) return rounded(plain + by, FINE);
  const found = WITH_DISTANCE.exec(written);
  const isSum = found !== null && isBalanced(found[1]);
  const rest = isSum ? found[1] : written;
  const before = isSum ? Number(found[3]) * (found[2] === '-' ? -1 : 1) : 0;
  const distance = rounded(before + by, FINE);
  if (distance === 0) return rest;
  return `${rest} ${distance < 0 ? '-' : '+'} ${Math.abs(distance)}`;
}

/** The measure that a quantity is a plain share of; null where it is more than that. */
export const shareOf = (written: Arithmetic): 'length' | 'width' | null =>
  (typeof written === 'string' && (SHARE.exec(written)?.[1] as 'length' | 'width')) || null;

/** A plain share, larger by a distance at the usual sizes. */
export function plusShare(written: Arithmetic, by: number, sizes: Sizes): Arithmetic {
  const [, measure, share] = SHARE.exec(String(written))!;
  const added = rounded(by / sizes[measure as keyof Sizes], FINEST);
  return `${measure} * ${rounded(Number(share) + added, FINEST)}`;
}

/** A distance as a share of a measure, as what is drawn on the bench is written. */
export const asShare = (measure: keyof Sizes, distance: number, sizes: Sizes): Arithmetic =>
  distance === 0 ? 0 : `${measure} * ${rounded(distance / sizes[measure], FINE)}`;

function isBalanced(text: string): boolean {
  let depth = 0;
  for (const sign of text) {
    if (sign === '(') depth++;
    if (sign === ')' && --depth < 0) return false;
  }
  return depth === 0;
}
