import type { Block } from '../../src/block/block.js';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { readSewnBlock } from '../../src/block/read-stitch-file.js';
import { baseName } from '../../src/formats/base-name.js';
import type { BlockSource } from '../../src/formats/dressing.js';
import { decodeText, fileKind } from '../../src/formats/file-kind.js';
import { InputError } from '../../src/input-error.js';
import type { GivenFile } from './messages.js';

/**
 * The block of a dressing: from the drawing that the dressing holds, else from the file that was given for it.
 * @throws InputError when there is neither
 */
export async function readBlock(source: BlockSource, held: GivenFile | null): Promise<Block> {
  if (source.svg !== undefined) return readSvgBlock(source.svg, source.file, source);
  if (!held) {
    throw new InputError(
      'block-missing',
      baseName(source.file),
      'is the block that this dressing is of, and it is not in it',
      'drop both files together',
    );
  }
  return fileKind(held.name, held.bytes) === 'stitch-file'
    ? readSewnBlock(held.bytes, held.name, source)
    : readSvgBlock(decodeText(held.bytes, held.name), held.name, source);
}
