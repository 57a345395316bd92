import { checkValues, type Sized } from '../fit/sized.js';

/** The length of a row's repeats where it keeps step with the first row, mm. */
const lengthInStep = (first: Sized, times: number): number => first.repeat / times;

/**
 * A row that keeps step with the first one can do so.
 * @throws InputError when the length that its repeats would have is out of its stitch's range
 */
export function checkStep(first: Sized, { stitch }: Sized, times: number): void {
  checkValues(stitch, { repeat: lengthInStep(first, times) });
}

/** The first row, made smaller no further than is still a good size for the rows that keep step with it. */
export function leadingAll(
  first: Sized,
  others: readonly { readonly sized: Sized; readonly times: number }[],
): Sized {
  const leasts = others.map(({ sized, times }) => sized.stitch.smallest.repeat / lengthInStep(first, times));
  return { ...first, least: Math.min(1, Math.max(first.least, ...leasts)) };
}
