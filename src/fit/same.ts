/**
 * Whether two values hold the same numbers and words: plain records, lists and typed arrays, some levels deep. Functions,
 * sets and the like are the same only when they are one.
 */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const kind = Object.getPrototypeOf(a);
  if (kind !== Object.getPrototypeOf(b)) return false;
  if (a instanceof Float64Array) return areSameNumbers(a, b as Float64Array);
  if (ArrayBuffer.isView(a) || Array.isArray(a))
    return isSameList(a as unknown as List, b as unknown as List);
  if (kind !== Object.prototype) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) =>
    isSame((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}

type List = ArrayLike<unknown>;

function isSameList(a: List, b: List): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!isSame(a[i], b[i])) return false;
  return true;
}

/** Most of what is compared; nothing is made on the way. */
function areSameNumbers(a: Float64Array, b: Float64Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
