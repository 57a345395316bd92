import { baseName } from '../formats/base-name.js';
import type { BlockSource } from '../formats/dressing.js';
import { readSvgDrawing } from '../formats/svg-drawing.js';
import type { Block } from './block.js';
import { buildSeamMap } from './build-seam-map.js';

/**
 * A block from the text of an SVG drawing.
 *
 * @param fileName for messages and the block's name
 * @throws InputError when the text is no drawing of lines, see readSvgDrawing
 */
export async function readSvgBlock(text: string, fileName: string, source: BlockSource): Promise<Block> {
  const drawing = await readSvgDrawing(text, fileName);
  const { map, findings } = buildSeamMap(drawing, source);
  const name = baseName(fileName);
  return {
    name,
    map,
    existing: null,
    stops: [],
    origin: drawing.origin,
    ...(drawing.keepClear?.length && { keepClear: drawing.keepClear }),
    findings: [...(drawing.findings ?? []), ...findings],
  };
}
