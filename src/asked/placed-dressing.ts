import type { Dressing, SeamReference } from '../formats/dressing.js';
import { isAsItWas, type Placement, placedPoint, unplacedPoint } from '../geometry/placement.js';
import type { Point } from '../geometry/point.js';

/**
 * A dressing tells places on the block as it was drawn, so that it can be made larger and turned without changing them.
 * This is the same dressing with its places where they lie on the placed block. Ornaments turn with the block and keep
 * their size; what is kept clear grows with it.
 */
export function placedDressing(dressing: Dressing, placement: Placement): Dressing {
  if (isAsItWas(placement)) return dressing;
  return moved(dressing, (p) => placedPoint(p, placement), placement.scale, placement.turn);
}

/** The dressing whose places lie so on the placed block, as it is kept: the other way round. */
export function unplacedDressing(dressing: Dressing, placement: Placement): Dressing {
  if (isAsItWas(placement)) return dressing;
  const tidy = ([x, y]: Point): Point => [Math.round(x * 1000) / 1000 + 0, Math.round(y * 1000) / 1000 + 0];
  return moved(dressing, (p) => tidy(unplacedPoint(p, placement)), 1 / placement.scale, -placement.turn);
}

function moved(dressing: Dressing, move: (p: Point) => Point, scale: number, turn: number): Dressing {
  const reference = (one: SeamReference): SeamReference => ({
    ...one,
    middle: one.middle && move(one.middle),
    ends: one.ends && [move(one.ends[0]), move(one.ends[1])],
  });
  return {
    ...dressing,
    treatments: dressing.treatments.map((one) => ({ ...one, seam: reference(one.seam) })),
    ...(dressing.ornaments && {
      ornaments: dressing.ornaments.map((one) => ({
        ...one,
        ...(one.at && { at: move(one.at) }),
        ...(typeof one.patch === 'object' && { patch: { at: move(one.patch.at) } }),
        ...(one.turn !== 'fit' && { turn: wrapped((one.turn ?? 0) + turn) }),
      })),
    }),
    ...(dressing.keepClear && {
      keepClear: dressing.keepClear.map((one) => ({
        ...one,
        ...(one.polygon && { polygon: one.polygon.map(move) }),
        ...(one.circle && { circle: { at: move(one.circle.at), radius: scale * one.circle.radius } }),
      })),
    }),
    ...(dressing.hooping?.align && {
      hooping: { ...dressing.hooping, align: dressing.hooping.align.map(move) },
    }),
    ...(dressing.fabrics && {
      fabrics: dressing.fabrics.map((one) => ({
        ...one,
        patch: { ...one.patch, at: one.patch.at && move(one.patch.at) },
      })),
    }),
    ...(dressing.bare && { bare: dressing.bare.map(reference) }),
  };
}

/** Degrees from -360 to 360, as a file may hold them. */
const wrapped = (angle: number): number => angle % 360;
