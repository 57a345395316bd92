/**
 * Evenly spread numbers from -1 to 1 that look unrelated for related keys, and are the same on every machine: the mixing
 * function of SplitMix32 over the keys in turn (after Steele, Lea and Flood, "Fast splittable pseudorandom number
 * generators", 2014; constants from memory).
 */
export function noise(...keys: readonly number[]): number {
  let hash = 0;
  for (const key of keys) hash = mixed((hash ^ key) + 0x9e3779b9);
  return hash / 2 ** 31 - 1;
}

function mixed(value: number): number {
  let z = value | 0;
  z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
  z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
  return (z ^ (z >>> 15)) >>> 0;
}
