/**
 * Typed arrays of numbers, all 0, cut from buffers that many share: to the engine one with a buffer of its own costs about a
 * microsecond, and work along seams makes tens of thousands of small ones. Whoever hands such an array on to another thread
 * hands on the shared buffer: copy it first, or send it together with its neighbors.
 */

/** Bytes of a shared buffer. */
const SHARED = 1 << 16;
/** So few bytes the engine keeps in the object itself. */
const IN_OBJECT = 64;
/** So many bytes are worth a buffer of their own. */
const OWN = 1 << 14;

let buffer = new ArrayBuffer(SHARED);
let used = 0;

/** Where so many bytes begin in the shared buffer, aligned for the widest numbers. */
function roomFor(bytes: number): number {
  const at = (used + 7) & ~7;
  if (at + bytes <= SHARED) {
    used = at + bytes;
    return at;
  }
  buffer = new ArrayBuffer(SHARED);
  used = bytes;
  return 0;
}

const isShared = (bytes: number) => bytes > IN_OBJECT && bytes <= OWN;

export function float64s(length: number): Float64Array {
  if (!isShared(8 * length)) return new Float64Array(length);
  const at = roomFor(8 * length);
  return new Float64Array(buffer, at, length);
}

export function float32s(length: number): Float32Array {
  if (!isShared(4 * length)) return new Float32Array(length);
  const at = roomFor(4 * length);
  return new Float32Array(buffer, at, length);
}

export function int32s(length: number): Int32Array {
  if (!isShared(4 * length)) return new Int32Array(length);
  const at = roomFor(4 * length);
  return new Int32Array(buffer, at, length);
}

export function uint16s(length: number): Uint16Array {
  if (!isShared(2 * length)) return new Uint16Array(length);
  const at = roomFor(2 * length);
  return new Uint16Array(buffer, at, length);
}

export function uint8s(length: number): Uint8Array {
  if (!isShared(length)) return new Uint8Array(length);
  const at = roomFor(length);
  return new Uint8Array(buffer, at, length);
}

/** The same numbers in an array of their own. */
export function copied(numbers: Float64Array | readonly number[]): Float64Array {
  const own = float64s(numbers.length);
  own.set(numbers);
  return own;
}
