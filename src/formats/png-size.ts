/** Bytes before the first chunk, and of the header chunk that follows: length, name, 13 bytes, sum. */
const SIGNATURE = 8;
const HEADER = 25;

/**
 * A PNG that also tells how large it is on paper: a pHYs chunk behind its header, of which a PNG may have one (Portable
 * Network Graphics, chunk pHYs).
 */
export function withDotsPerMm(png: Uint8Array, dotsPerMm: number): Uint8Array {
  const chunk = new Uint8Array(21);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, 9);
  chunk.set([0x70, 0x48, 0x59, 0x73], 4);
  const dotsPerMeter = Math.round(dotsPerMm * 1000);
  view.setUint32(8, dotsPerMeter);
  view.setUint32(12, dotsPerMeter);
  // the unit is the meter
  view.setUint8(16, 1);
  view.setUint32(17, checkSum(chunk.subarray(4, 17)));
  const from = SIGNATURE + HEADER;
  const sized = new Uint8Array(png.length + chunk.length);
  sized.set(png.subarray(0, from));
  sized.set(chunk, from);
  sized.set(png.subarray(from), from + chunk.length);
  return sized;
}

/** The cyclic redundancy check of a chunk's name and data (same, annex on CRC). */
function checkSum(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return ~sum >>> 0;
}
