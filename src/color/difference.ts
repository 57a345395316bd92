/** How different two colors '#rrggbb' look: 0 for the same, about 1 for what a trained eye just tells apart, 100 from black to white. */
export type Difference = (a: string, b: string) => number;

/**
 * The CIEDE2000 color difference (CIE 142-2001; G. Sharma, W. Wu, E. N. Dalal, 2005). The library behind it is slow to
 * load, so that it is loaded once somebody asks. Each color is converted once.
 */
export async function loadDifference(): Promise<Difference> {
  const { converter, differenceCiede2000 } = await import('culori');
  const toLab = converter('lab65');
  const between = differenceCiede2000();
  const known = new Map<string, ReturnType<typeof toLab>>();
  const lab = (hex: string) => {
    const found = known.get(hex) ?? toLab(hex);
    if (!found) throw new RangeError(`'${hex}' is no color`);
    known.set(hex, found);
    return found;
  };
  return (a, b) => between(lab(a), lab(b));
}
