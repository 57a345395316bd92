import { baseName } from '../formats/base-name.js';
import type { BlockSource } from '../formats/dressing.js';
import { readDst } from '../formats/dst-read.js';
import type { Block } from './block.js';
import { buildSeamMap } from './build-seam-map.js';
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
