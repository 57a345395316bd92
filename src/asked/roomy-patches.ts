import type { Patch, SeamMap } from '../block/seam-map.js';
import { type CircleOptions, type Clearance, largestClearCircle } from '../fit/clear-circle.js';
import type { Circle } from '../geometry/enclosing-circle.js';

/** A patch and the largest circle in it that is clear of what lies on it. */
export interface RoomyPatch {
  readonly patch: Patch;
  readonly circle: Circle;
}

/**
 * The patches of a block by the largest clear circle that each holds, the roomiest first; those without room are left out.
 * @param on what lies on a patch; nothing when not given
 */
export function roomyPatches(
  { patches }: Pick<SeamMap, 'patches'>,
  on: (patch: Patch) => readonly Clearance[] = () => [],
  options: CircleOptions = {},
): RoomyPatch[] {
  return patches
    .flatMap((patch) => {
      const circle = largestClearCircle(patch, on(patch), options);
      return circle ? [{ patch, circle }] : [];
    })
    .sort((a, b) => b.circle.radius - a.circle.radius || a.patch.id - b.patch.id);
}
