/**
 * The running number of the stitch that each color stop begins with, from 1, by which a machine finds the place again;
 * null for a stop without stitches.
 */
export function firstStitches(stops: readonly { readonly stitches: number }[]): (number | null)[] {
  let sewn = 0;
  return stops.map(({ stitches }) => {
    const first = stitches > 0 ? sewn + 1 : null;
    sewn += stitches;
    return first;
  });
}
