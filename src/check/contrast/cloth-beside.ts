import Flatbush from 'flatbush';
import type { Patch } from '../../block/seam-map.js';
import { insideRings } from '../../geometry/area.js';
import { boxOf } from '../../geometry/box.js';
import type { Runs } from '../../needle/run.js';

/** The cloth that the eye compares a thread with lies so far beside it, mm. Our own choice. */
const BESIDE = 0.5;
/** Stitches of a thread that are looked at, evenly spread over its work: more would tell nothing new. */
const MOST_LOOKED_AT = 500;

/** How much of a thread, in mm of its stitches' sides, lies beside the cloth of each patch. */
export type ClothBeside = (runs: Runs) => ReadonlyMap<number, number>;

/** @param patches each with its number; they do not overlap */
export function clothBeside(patches: readonly Patch[]): ClothBeside {
  const patchAt = patchFinder(patches);
  return ({ xy, start }) => {
    const beside = new Map<number, number>();
    const stitches = Math.max(0, (start.at(-1) ?? 0) - (start.length - 1));
    const step = Math.max(1, Math.ceil(stitches / MOST_LOOKED_AT));
    let nth = 0;
    for (let run = 0; run + 1 < start.length; run++) {
      for (let i = start[run]; i + 1 < start[run + 1]; i++) {
        if (nth++ % step > 0) continue;
        const [x, y] = [(xy[2 * i] + xy[2 * i + 2]) / 2, (xy[2 * i + 1] + xy[2 * i + 3]) / 2];
        const [dx, dy] = [xy[2 * i + 2] - xy[2 * i], xy[2 * i + 3] - xy[2 * i + 1]];
        const length = Math.sqrt(dx * dx + dy * dy);
        if (length === 0) continue;
        for (const side of [BESIDE / length, -BESIDE / length]) {
          const patch = patchAt(x - side * dy, y + side * dx);
          if (patch !== null) beside.set(patch, (beside.get(patch) ?? 0) + length);
        }
      }
    }
    return beside;
  };
}

/** Which patch a place lies on; null where it lies on none. @param patches do not overlap */
export function patchFinder(patches: readonly Patch[]): (x: number, y: number) => number | null {
  if (patches.length === 0) return () => null;
  const index = new Flatbush(patches.length);
  for (const { boundary } of patches) {
    const { left, top, right, bottom } = boxOf([boundary]);
    index.add(left, top, right, bottom);
  }
  index.finish();
  return (x, y) => {
    const found = index
      .search(x, y, x, y)
      .find((p) => insideRings([x, y], [patches[p].boundary, ...patches[p].holes]));
    return found === undefined ? null : patches[found].id;
  };
}
