import fc from 'fast-check';

/** Tenths of a millimeter between two whole ones, each as likely as the other: doubles would crowd near 0. */
export const tenths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 10 * min, max: 10 * max }).map((n) => n / 10);
