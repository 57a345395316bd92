import { InputError } from '../input-error.js';

/** A picture as rows of pixels, four bytes each: red, green, blue, opacity. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** Millions of pixels: more than any camera's picture of a fabric needs, and no more than is decoded in a few seconds. */
const MOST_MEGAPIXELS = 32;
/** What the decoder of photographs may take to do so, MB. */
const MOST_MEMORY = 2048;

const RIGHT = 'give a PNG or JPEG picture of the fabric';

/**
 * A PNG or JPEG picture, told by its content. Its size is read before anything is unpacked.
 * @param where names the file in messages
 * @throws InputError when it is neither, is damaged, or is larger than 32 megapixels
 */
export async function readPicture(bytes: Uint8Array, where: string): Promise<Picture> {
  const kind = kindOf(bytes);
  if (kind === null) throw new InputError('no-picture', where, 'is no picture', RIGHT);
  const size = kind === 'png' ? pngSize(bytes) : jpegSize(bytes);
  if (size === null) throw damaged(where, kind);
  const megapixels = (size.width * size.height) / 1e6;
  if (megapixels > MOST_MEGAPIXELS) {
    throw new InputError(
      'picture-too-large',
      where,
      `is a picture of ${Math.round(megapixels)} megapixels`,
      `make it smaller; up to ${MOST_MEGAPIXELS} megapixels can be read, and one is plenty`,
    );
  }
  try {
    return kind === 'png' ? await decodePng(bytes) : await decodeJpeg(bytes);
  } catch {
    throw damaged(where, kind);
  }
}

const damaged = (where: string, kind: 'png' | 'jpeg'): InputError =>
  new InputError('broken-picture', where, `is a damaged ${kind.toUpperCase()} picture`, 'save it again');

function kindOf(bytes: Uint8Array): 'png' | 'jpeg' | null {
  const begins = (...start: number[]) => start.every((byte, i) => bytes[i] === byte);
  if (begins(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  return begins(0xff, 0xd8, 0xff) ? 'jpeg' : null;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** From the header chunk, which comes first (Portable Network Graphics 1.2, section 11.2.2). */
function pngSize(bytes: Uint8Array): Size | null {
  if (bytes.length < 33 || String.fromCharCode(...bytes.subarray(12, 16)) !== 'IHDR') return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  return sound({ width: view.getUint32(16), height: view.getUint32(20) });
}

/** From the frame header, SOF0 to SOF15 without the markers between that mean other things (ITU T.81, table B.1). */
function jpegSize(bytes: Uint8Array): Size | null {
  const two = (at: number) => (bytes[at] << 8) | bytes[at + 1];
  for (let at = 2; at + 8 < bytes.length; ) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1];
    if (marker === 0xff) {
      at++;
      continue;
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return sound({ width: two(at + 7), height: two(at + 5) });
    at += 2 + two(at + 2);
  }
  return null;
}

const sound = (size: Size): Size | null => (size.width > 0 && size.height > 0 ? size : null);

async function decodeJpeg(bytes: Uint8Array): Promise<Picture> {
  const { decode } = (await import('jpeg-js')).default;
  const { width, height, data } = decode(bytes, {
    useTArray: true,
    tolerantDecoding: false,
    maxResolutionInMP: MOST_MEGAPIXELS,
    maxMemoryUsageInMB: MOST_MEMORY,
  });
  return { width, height, data };
}

async function decodePng(bytes: Uint8Array): Promise<Picture> {
  const { decode } = await import('fast-png');
  const { width, height, data: packed, depth, channels, palette } = decode(bytes);
  const samples = depth < 8 ? unpacked(packed, width, height, depth) : packed;
  const data = new Uint8Array(4 * width * height);
  if (palette) {
    const colors = Uint8Array.from(
      { length: 4 * palette.length },
      (_, i) => palette[i >> 2][i & 3] ?? (i % 4 === 3 ? 255 : 0),
    );
    for (let i = 0; i < width * height; i++) {
      for (let c = 0; c < 4; c++) data[4 * i + c] = colors[4 * samples[i] + c];
    }
    return { width, height, data };
  }
  const scale = 255 / (2 ** depth - 1);
  const [green, blue] = channels < 3 ? [0, 0] : [1, 2];
  const hasOpacity = channels === 2 || channels === 4;
  for (let i = 0, at = 0; i < data.length; i += 4, at += channels) {
    data[i] = scale * samples[at];
    data[i + 1] = scale * samples[at + green];
    data[i + 2] = scale * samples[at + blue];
    data[i + 3] = hasOpacity ? scale * samples[at + channels - 1] : 255;
  }
  return { width, height, data };
}

/** Samples of less than a byte, one a pixel, whose rows begin on whole bytes. */
function unpacked(packed: ArrayLike<number>, width: number, height: number, depth: number): Uint8Array {
  const samples = new Uint8Array(width * height);
  const perRow = Math.ceil((width * depth) / 8);
  const mask = 2 ** depth - 1;
  for (let y = 0, i = 0; y < height; y++) {
    for (let bit = 0; bit < width * depth; bit += depth, i++) {
      samples[i] = (packed[y * perRow + (bit >> 3)] >> (8 - depth - (bit & 7))) & mask;
    }
  }
  return samples;
}
