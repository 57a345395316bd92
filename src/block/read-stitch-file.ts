import { baseName } from '../formats/base-name.js';
import type { BlockSource } from '../formats/dressing.js';
import { readDst } from '../formats/dst-read.js';
import type { Block } from './block.js';
import { buildSeamMap } from './build-seam-map.js';
import { readSvgBlock } from './read-drawing.js';
import { sewnLines } from './sewn-lines.js';

/**
 * A block from the bytes of a DST stitch file: the stops that `source` names are its seams.
 * @throws InputError when the bytes are no DST file, or a stop is missing, empty or no seam
 */
export function readStitchBlock(bytes: Uint8Array, fileName: string, source: BlockSource): Block {
  const existing = readDst(bytes, fileName);
  const stops = source.stops ?? [];
  const drawing = sewnLines(existing, stops, fileName);
  const { map, findings } = buildSeamMap(drawing, source);
  return { name: baseName(fileName), map, existing, stops, origin: drawing.origin, findings };
}

/**
 * A block from the bytes of a DST stitch file: its seams are the stops that `source` names, or were traced over them. Then all
 * that the file sews stays as it is, and so does the frame.
 * @throws InputError as readStitchBlock does, and when what was traced is no drawing of lines
 */
export async function readSewnBlock(
  bytes: Uint8Array,
  fileName: string,
  source: BlockSource,
): Promise<Block> {
  if (source.traced === undefined) return readStitchBlock(bytes, fileName, source);
  const existing = readDst(bytes, fileName);
  const stops = source.stops ?? [];
  const { origin } = sewnLines(existing, stops, fileName);
  const { map, keepClear, findings } = await readSvgBlock(source.traced, `${fileName} (traced)`, source);
  return {
    name: baseName(fileName),
    map,
    existing,
    stops,
    origin,
    findings,
    ...(keepClear && { keepClear }),
  };
}
