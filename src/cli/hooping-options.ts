import type { SeamMap } from '../block/seam-map.js';
import { meetingsOf, type SeamMeeting } from '../block/wishes-by-number.js';
import type { Dressing } from '../formats/dressing.js';
import { InputError } from '../input-error.js';

/** What is sewn before the dressing when a finished block is hooped; said here, it goes before what a dressing says. */
export interface HoopingOptions {
  readonly placement?: true;
  readonly basting?: number | true;
  readonly align?: SeamMeeting[];
  readonly alignCrosses?: true;
}

/** A basting box lies so far outside the block unless the maker says otherwise, mm. Common practice: 8 to 10. */
export const USUAL_BASTING = 9;

/**
 * The dressing with what is to be sewn first.
 *
 * @param map of the block as drawn
 * @throws InputError when seams that are named do not meet, or crosses are asked for at no place
 */
export function withHooping(
  dressing: Dressing,
  { placement, basting, align, alignCrosses }: HoopingOptions,
  map: SeamMap,
): Dressing {
  if (!placement && basting === undefined && !align && !alignCrosses) return dressing;
  const tidy = (mm: number) => Math.round(mm * 1000) / 1000;
  const places = align?.flatMap((one) =>
    meetingsOf(map, '--align', one).map(({ at: [x, y] }) => [tidy(x), tidy(y)] as const),
  );
  const hooping = {
    ...dressing.hooping,
    ...(placement && { outline: true }),
    ...(basting !== undefined && { basting: basting === true ? USUAL_BASTING : basting }),
    ...(places && { align: places }),
    ...(alignCrosses && { crosses: true }),
  };
  if (hooping.crosses && !hooping.align?.length) {
    throw new InputError(
      'no-places',
      '--align-crosses',
      'stands where no place is named',
      'name junctions with --align, such as --align 4@3,7@2,9@1',
    );
  }
  return { ...dressing, hooping };
}
