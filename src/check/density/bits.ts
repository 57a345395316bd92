/**
 * How many bits are set in each byte of a word, two by two, four by four (Warren, "Hacker's Delight", from memory). Those of up
 * to 31 words may be added before they are summed.
 */
export function bitsByByte(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return (fours + (fours >>> 4)) & 0x0f0f0f0f;
}

/** The sum of the four bytes of a word. */
export function sumOfBytes(word: number): number {
  const pairs = (word & 0x00ff00ff) + ((word >>> 8) & 0x00ff00ff);
  return (pairs + (pairs >>> 16)) & 0xffff;
}

/** How many bits of a word are set. */
export const bits = (word: number): number => sumOfBytes(bitsByByte(word));
