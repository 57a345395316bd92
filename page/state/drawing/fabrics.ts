import { batch } from '@preact/signals';
import { insideRings } from '../../../src/geometry/area.js';
import type { Point } from '../../../src/geometry/point.js';
import type { Cloth } from '../../core/drawing-messages.js';
import type { DrawnBlock } from '../../core/messages.js';
import { change, whileTelling } from '../actions.js';
import { ask } from '../core-call.js';
import { told } from '../work.js';
import { bare, chosenPatch } from './board.js';
import { fabricPhoto, pieceAtRing } from './fabric-photo.js';
import { photo } from './photo.js';
import { pieceOfPatch } from './photo-pieces.js';

/** The patch that a place lies in. */
export const patchAt = ({ patches }: DrawnBlock, p: Point): number | null =>
  patches.find(({ rings }) => insideRings(p, rings))?.id ?? null;

/** A patch gets a plain fabric. */
export const dye = (patch: number, hex: string): void =>
  clothe(new Map([[patch, { colors: [{ hex, share: 1 }] }]]), `fabric ${patch}`);

/** Patches get fabrics; the last one that is named for a patch counts. @param grip see change */
function clothe(cloths: ReadonlyMap<number, Cloth>, grip: string | null = null): void {
  const places = new Map(bare.value?.insides);
  const named = [...cloths].flatMap(([patch, cloth]) => {
    const at = places.get(patch);
    return at ? [{ patch: { id: patch, at }, ...cloth }] : [];
  });
  if (named.length === 0) return;
  const isNamed = (at: readonly [number, number] | null) =>
    named.some(({ patch }) => patch.at[0] === at?.[0] && patch.at[1] === at[1]);
  change(
    (was) => ({
      ...was,
      fabrics: [...(was.fabrics ?? []).filter(({ patch }) => !isNamed(patch.at)), ...named],
    }),
    grip,
  );
}

/** Every patch gets the fabric that the photo behind the drawing shows where it lies. */
export const clotheFromPhoto = () =>
  whileTelling('Looking at the fabrics', async () => {
    const patches = bare.value?.block.patches ?? [];
    const seen = patches.flatMap(({ id, rings }) => {
      const piece = pieceOfPatch(rings);
      return piece ? [{ id, piece }] : [];
    });
    const cloths = await ask('fabrics', {
      picture: photo.value?.name ?? 'photo',
      pieces: seen.map(({ piece }) => piece),
    });
    const found = seen.flatMap(({ id }, k) => (cloths[k] ? [[id, cloths[k]] as const] : []));
    clothe(new Map(found));
    told.value = `${found.length} of ${patches.length} patches have the fabrics of the photo`;
  });

/** The chosen patch gets what lies in the ring on the photo of the fabrics, and the next patch is chosen. */
export const clotheFromRing = () =>
  whileTelling('Looking at the fabric', async () => {
    const [patch, from] = [chosenPatch.value, fabricPhoto.value];
    if (patch === null || !from) return;
    const [cloth] = await ask('fabrics', { picture: from.name, pieces: [pieceAtRing(from)] });
    if (!cloth) return;
    const ids = (bare.value?.block.patches ?? []).map(({ id }) => id);
    const next = ids[(ids.indexOf(patch) + 1) % ids.length];
    batch(() => {
      clothe(new Map([[patch, cloth]]));
      chosenPatch.value = next;
    });
    told.value = `Patch ${patch} has that fabric; patch ${next} is next`;
  });
