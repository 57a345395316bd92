import type { Dressing, KeepClear } from '../../src/formats/dressing.js';
import { type Placement, unplacedPoint } from '../../src/geometry/placement.js';

/**
 * Changes of places that are kept clear and have corners. Places are as on the table, mm; a dressing tells them on the block
 * as drawn, to a tenth.
 */
type Place = readonly [number, number];
type Corners = NonNullable<KeepClear['polygon']>;

/** Fewer corners hold no cloth. */
export const LEAST_CORNERS = 3;

const tenth = (mm: number): number => Math.round(10 * mm) / 10;
const drawn = ([x, y]: Place, placement: Placement): [number, number] => {
  const [a, b] = unplacedPoint([x, y], placement);
  return [tenth(a), tenth(b)];
};

export function withClearShape(dressing: Dressing, corners: Corners, placement: Placement): Dressing {
  if (corners.length < LEAST_CORNERS) return dressing;
  const known = dressing.keepClear ?? [];
  const polygon = corners.map((at) => drawn(at, placement));
  return { ...dressing, keepClear: [...known, { name: freeName(known), polygon }] };
}

/** A name that no other place has. */
export function freeName(known: readonly KeepClear[]): string {
  const names = new Set(known.map(({ name }) => name));
  let n = known.length + 1;
  while (names.has(`kept clear ${n}`)) n++;
  return `kept clear ${n}`;
}

export const withCornerAt = (
  dressing: Dressing,
  k: number,
  corner: number,
  at: Place,
  placement: Placement,
): Dressing =>
  withCorners(dressing, k, (corners) => corners.map((one, i) => (i === corner ? drawn(at, placement) : one)));

/** One more corner, behind another one. */
export const withCornerBehind = (
  dressing: Dressing,
  k: number,
  corner: number,
  at: Place,
  placement: Placement,
): Dressing =>
  withCorners(dressing, k, (corners) => [
    ...corners.slice(0, corner + 1),
    drawn(at, placement),
    ...corners.slice(corner + 1),
  ]);

/** A corner less; with too few of them the place is kept clear no more. */
export function withoutCorner(dressing: Dressing, k: number, corner: number): Dressing {
  const corners = dressing.keepClear?.[k]?.polygon;
  if (!corners || corners.length > LEAST_CORNERS)
    return withCorners(dressing, k, (all) => all.filter((_, i) => i !== corner));
  return { ...dressing, keepClear: dressing.keepClear!.filter((_, i) => i !== k) };
}

/** The whole place goes from one place to another. */
export function withShapeMoved(
  dressing: Dressing,
  k: number,
  from: Place,
  to: Place,
  placement: Placement,
): Dressing {
  const [a, b] = [unplacedPoint([from[0], from[1]], placement), unplacedPoint([to[0], to[1]], placement)];
  // all by the same tenths, so that its shape stays
  const [dx, dy] = [tenth(b[0] - a[0]), tenth(b[1] - a[1])];
  if (dx === 0 && dy === 0) return dressing;
  return withCorners(dressing, k, (corners) => corners.map(([x, y]) => [tenth(x + dx), tenth(y + dy)]));
}

const withCorners = (dressing: Dressing, k: number, edit: (corners: Corners) => Corners): Dressing => ({
  ...dressing,
  keepClear: dressing.keepClear?.map((one, i) =>
    i === k && one.polygon ? { ...one, polygon: edit(one.polygon) } : one,
  ),
});
