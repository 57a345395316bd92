import type { Field } from './hoop.js';

/** Sewing fields that machines commonly have, mm, the smallest first. Common practice. */
export const HOOPS: readonly Field[] = [
  { width: 100, height: 100 },
  { width: 130, height: 180 },
  { width: 200, height: 200 },
  { width: 160, height: 260 },
  { width: 200, height: 300 },
];

/** How something lies in a sewing field. */
export interface HoopFit {
  /** '130 x 180 mm' */
  readonly name: string;
  readonly fits: boolean;
  /** it fits only turned by a right angle */
  readonly turned: boolean;
}

export function fitIn(hoop: Field, sewn: Field): HoopFit {
  const isIn = (width: number, height: number) => sewn.width <= width + 1e-9 && sewn.height <= height + 1e-9;
  const upright = isIn(hoop.width, hoop.height);
  const turned = isIn(hoop.height, hoop.width);
  return { name: `${hoop.width} x ${hoop.height} mm`, fits: upright || turned, turned: turned && !upright };
}

/** The smallest common sewing field that takes something, in either orientation; null when none does. */
export const smallestField = (sewn: Field): Field | null =>
  HOOPS.find((hoop) => fitIn(hoop, sewn).fits) ?? null;

/** How something lies in the smallest common sewing field that takes it; null when none does. */
export function smallestHoop(sewn: Field): HoopFit | null {
  const hoop = smallestField(sewn);
  return hoop && fitIn(hoop, sewn);
}

/** How work lies in the hoop that it is for, or, where none is named, in the smallest common one that takes it. */
export const hoopFor = (hoop: Field | null, sewn: Field): HoopFit | null =>
  hoop ? fitIn(hoop, sewn) : smallestHoop(sewn);
