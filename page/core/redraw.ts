import { patchOf, referenceToPatch } from '../../src/asked/fabrics.js';
import type { Block } from '../../src/block/block.js';
import type { Seam, SeamMap } from '../../src/block/seam-map.js';
import { referenceTo, seamOf } from '../../src/fit/seam-reference.js';
import { onSeam } from '../../src/fit/turned-round.js';
import type { Dressing, PatchFabric, SeamReference, Treatment } from '../../src/formats/dressing.js';
import type { SeamDrawing } from '../../src/formats/seam-drawing.js';
import { pointInside } from '../../src/geometry/area.js';
import type { Point } from '../../src/geometry/point.js';
import { carriedPoint, linePoints, lineUnder } from './drawn-lines.js';
import { withFreeNumbers } from './renumber.js';

/**
 * A dressing goes along with its block when that is drawn anew: what lies on a line goes where the line went, and every
 * patch keeps the fabric that lay where it is. A treatment whose line is gone stays as it was, so that it can be named.
 *
 * @param from the drawing that the dressing's block is of, and the block
 * @param to the drawing that it is to be of, and its block; the dressing gets this one's source
 */
export function redrawn(
  dressing: Dressing,
  from: { readonly drawing: SeamDrawing; readonly block: Block },
  to: { readonly drawing: SeamDrawing; readonly block: Block },
): Dressing {
  const carry = carrier(from.drawing, to.drawing);
  const renamed = new Map<number | 'outline', number | 'outline'>();
  const taken = new Set<number | 'outline'>();
  const { map } = to.block;
  const treatments = dressing.treatments.map((one): Treatment => {
    const carried = carry(one.seam);
    const found = carried && seamOf(map, carried);
    const seam = found && referenceOf(found);
    // of two lines that became one, the first keeps its work
    if (!seam || taken.has(seam.id)) return one;
    taken.add(seam.id);
    renamed.set(one.seam.id, seam.id);
    return { ...onSeam(one, carried, found), seam };
  });
  const moved = (reference: SeamReference): SeamReference => {
    const carried = carry(reference);
    const found = carried && seamOf(map, carried);
    return found ? referenceOf(found) : reference;
  };
  const { bare, order } = dressing;
  return {
    ...dressing,
    treatments: withFreeNumbers(treatments, map),
    ...(bare && { bare: bare.map(moved) }),
    ...(order && { order: order.map((id) => renamed.get(id) ?? id) }),
    fabrics: fabricsOn(map, from.block.map, dressing.fabrics ?? []),
  };
}

const referenceOf = (seam: Seam | 'outline'): SeamReference =>
  seam === 'outline' ? { id: 'outline', middle: null, ends: null } : referenceTo(seam);

/** Tells where a reference is once its line has moved; null when its line is gone. */
export function carrier(
  from: SeamDrawing,
  to: SeamDrawing,
): (reference: SeamReference) => SeamReference | null {
  const was = linePoints(from);
  const is = linePoints(to);
  return (reference) => {
    const { id, middle, ends } = reference;
    if (!middle || !ends || id === 'outline') return reference;
    const line = lineUnder(middle, was);
    const carried = [middle, ...ends].map((p) => carriedPoint(p, was, is, line));
    const [m, a, b] = carried;
    if (!m) return null;
    return { id, middle: m, ends: [a ?? ends[0], b ?? ends[1]] };
  };
}

/** Fabrics of the patches that are there now, each as it lay at a place well inside of them. */
function fabricsOn(map: SeamMap, before: SeamMap, fabrics: readonly PatchFabric[]): PatchFabric[] {
  const named = new Map<number, PatchFabric>();
  for (const fabric of fabrics) {
    const patch = patchOf(before, fabric.patch);
    if (patch) named.set(patch.id, fabric);
  }
  return map.patches.flatMap((patch): PatchFabric[] => {
    const inside: Point | null = pointInside([patch.boundary, ...patch.holes]);
    const under = inside && patchOf(before, { id: 0, at: [inside[0], inside[1]] });
    if (!under) return [];
    const known = named.get(under.id);
    if (known) return [{ ...known, patch: referenceToPatch(patch) }];
    if (!under.fabric) return [];
    return [{ patch: referenceToPatch(patch), colors: [{ hex: under.fabric, share: 1 }] }];
  });
}
