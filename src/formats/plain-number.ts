/** A plain decimal number, and nothing behind it: '12', '-0.5', '.5'; never '12mm', '1e3', 'NaN', '0x10'. */
const PLAIN = /^[+-]?(\d+(\.\d+)?|\.\d+)$/;

/** The number that a person wrote; NaN when it is no plain one. */
export const plainNumber = (word: string): number => (PLAIN.test(word.trim()) ? Number(word) : Number.NaN);
