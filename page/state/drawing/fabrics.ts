import { insideRings } from '../../../src/geometry/area.js';
import type { Point } from '../../../src/geometry/point.js';
import type { DrawnBlock } from '../../core/messages.js';
import { change } from '../actions.js';
import { bare } from './board.js';

/** The patch that a place lies in. */
export const patchAt = ({ patches }: DrawnBlock, p: Point): number | null =>
  patches.find(({ rings }) => insideRings(p, rings))?.id ?? null;

/** A patch gets a plain fabric; the last one that is named for a patch counts. */
export function clothe(patch: number, hex: string): void {
  const at = bare.value?.insides.find(([id]) => id === patch)?.[1];
  if (!at) return;
  change(
    (was) => ({
      ...was,
      fabrics: [
        ...(was.fabrics ?? []).filter(
          ({ patch: { at: known } }) => known?.[0] !== at[0] || known[1] !== at[1],
        ),
        { patch: { id: patch, at }, colors: [{ hex, share: 1 }] },
      ],
    }),
    `fabric ${patch}`,
  );
}
