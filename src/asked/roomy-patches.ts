import type { Patch, SeamMap } from '../block/seam-map.js';
import { largestClearCircle } from '../fit/clear-circle.js';
import type { Circle } from '../geometry/enclosing-circle.js';

/** A patch and the largest circle in it, whatever lies on it. */
export interface RoomyPatch {
  readonly patch: Patch;
  readonly circle: Circle;
}

/** The patches of a block by the largest circle that each holds, the roomiest first. */
export function roomyPatches({ patches }: SeamMap): RoomyPatch[] {
  return patches
    .flatMap((patch) => {
      const circle = largestClearCircle(patch, []);
      return circle ? [{ patch, circle }] : [];
    })
    .sort((a, b) => b.circle.radius - a.circle.radius || a.patch.id - b.patch.id);
}
