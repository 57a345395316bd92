import type { Dressing, KeepClear, PlacedOrnament } from '../../src/formats/dressing.js';
import { boxOf } from '../../src/geometry/box.js';
import { type Placement, placedPoint, unplacedPoint } from '../../src/geometry/placement.js';
import { DEFAULT_PASSES } from '../../src/harmony/passes.js';
import type { Figure, Picture } from '../core/messages.js';
import { freeName } from './clear-shapes.js';
import type { Round } from './free-place.js';

/** Changes of what stands free on the block: figures, and places that are kept clear. Places are as on the table, mm. */
type Place = readonly [number, number];
type Standing = Pick<Picture, 'ornaments' | 'placement'>;

const tidy = ([x, y]: Place): [number, number] => [Math.round(10 * x) / 10, Math.round(10 * y) / 10];
const drawn = (at: Place, placement: Placement): [number, number] =>
  tidy(unplacedPoint([at[0], at[1]], placement));

export function withFigure(dressing: Dressing, figure: Figure, at: Place, placement: Placement): Dressing {
  const threads = dressing.threads.length;
  const more = Array.from({ length: figure.threads - 1 }, (_, k) => (k + 1) % threads);
  const placed: PlacedOrnament = {
    ornament: figure.name,
    at: drawn(at, placement),
    parameters: { size: figure.size.default },
    thread: 0,
    ...(more.length > 0 && { moreThreads: more }),
    passes: DEFAULT_PASSES,
    pinned: true,
  };
  return { ...dressing, ornaments: [...(dressing.ornaments ?? []), placed] };
}

/** A figure that the maker moves stands where she puts it, and stays when the rest is mixed again. */
export const withFigureAt = (dressing: Dressing, k: number, at: Place, placement: Placement): Dressing =>
  withFigureChanged(dressing, k, ({ patch: _, ...one }) => ({ ...one, at: drawn(at, placement) }));

export const withFigureSize = (dressing: Dressing, k: number, size: number): Dressing =>
  withFigureChanged(dressing, k, (one) => ({ ...one, parameters: { ...one.parameters, size } }));

/** How a figure is turned, degrees counterclockwise as seen, or what its thread is. */
export const withFigureTold = (
  dressing: Dressing,
  k: number,
  part: Partial<Pick<PlacedOrnament, 'turn' | 'thread'>>,
): Dressing => withFigureChanged(dressing, k, (one) => ({ ...one, ...part }));

const withFigureChanged = (
  dressing: Dressing,
  k: number,
  edit: (one: PlacedOrnament) => PlacedOrnament,
): Dressing => ({
  ...dressing,
  ornaments: dressing.ornaments?.map((one, i) => (i === k ? { ...edit(one), pinned: true } : one)),
});

export const withoutFigure = (dressing: Dressing, k: number): Dressing => ({
  ...dressing,
  ornaments: dressing.ornaments?.filter((_, i) => i !== k),
});

/** A place that is kept clear begins so large, mm. */
export const CLEAR = 12;

/** What stands free on the block: figures, and what is kept clear with all around it; mm as on the table. */
export function standingOn(dressing: Dressing, { ornaments, placement }: Standing): Round[] {
  const placed = ([x, y]: Place) => placedPoint([x, y], placement);
  const figures = (dressing.ornaments ?? []).flatMap(({ at, parameters }, k): Round[] => {
    // one that is put somewhere is there, whether it is sewn already or not
    const is = at ? placed(at) : ornaments[k];
    return is ? [{ at: is, reach: (parameters.size ?? 2 * CLEAR) / 2 }] : [];
  });
  const clear = (dressing.keepClear ?? []).flatMap(({ circle, polygon }): Round[] => {
    if (circle) return [{ at: placed(circle.at), reach: placement.scale * circle.radius }];
    if (!polygon) return [];
    const { left, top, right, bottom } = boxOf([Float64Array.from(polygon.flatMap(placed))]);
    return [
      { at: [(left + right) / 2, (top + bottom) / 2], reach: Math.max(right - left, bottom - top) / 2 },
    ];
  });
  return [...figures, ...clear];
}

export function withClearPlace(dressing: Dressing, at: Place, placement: Placement): Dressing {
  const known = dressing.keepClear ?? [];
  const circle = { at: drawn(at, placement), radius: CLEAR };
  return { ...dressing, keepClear: [...known, { name: freeName(known), circle }] };
}

export const withClearCircle = (
  dressing: Dressing,
  k: number,
  edit: (circle: NonNullable<KeepClear['circle']>) => NonNullable<KeepClear['circle']>,
): Dressing => ({
  ...dressing,
  keepClear: dressing.keepClear?.map((one, i) =>
    i === k && one.circle ? { ...one, circle: edit(one.circle) } : one,
  ),
});

export const withClearAt = (dressing: Dressing, k: number, at: Place, placement: Placement): Dressing =>
  withClearCircle(dressing, k, (circle) => ({ ...circle, at: drawn(at, placement) }));

export const withoutClearPlace = (dressing: Dressing, k: number): Dressing => ({
  ...dressing,
  keepClear: dressing.keepClear?.filter((_, i) => i !== k),
});
