import { basename } from 'node:path';
import type { Block } from '../block/block.js';
import type { BlockSource } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import { decodeText, type FileKind, fileKind, readInput } from './input-file.js';

/** A block's file, read but not yet understood. */
export interface BlockFile {
  readonly path: string;
  readonly kind: Exclude<FileKind, 'record'>;
  readonly bytes: Uint8Array;
}

export async function readBlockFile(path: string, command = 'dress'): Promise<BlockFile> {
  return blockFile(path, await readInput(path), command);
}

/** A file already read, as a block's file if it is one. */
export function blockFile(path: string, bytes: Uint8Array, command = 'dress'): BlockFile {
  const kind = fileKind(path, bytes);
  if (kind === 'record') {
    throw new InputError(
      'not-a-block',
      path,
      'is neither a drawing nor a stitch file',
      command === 'dress'
        ? 'give an .svg or a .dst file'
        : 'give the block itself, which a dressing names as "file"',
    );
  }
  return { path, kind, bytes };
}

/** The seam map of a drawing, or of the named stops of a stitch file. */
export async function readBlock(file: BlockFile, source: BlockSource): Promise<Block> {
  const name = basename(file.path);
  if (file.kind === 'stitch-file') {
    if (!source.stops?.length) {
      throw new InputError(
        'stops-missing',
        name,
        'is a stitch file, and which of its color stops are the seams is not said',
        `name them with --stops 1,2 (seamwright seams ${file.path} lists them)`,
      );
    }
    const { readSewnBlock } = await import('../block/read-stitch-file.js');
    return readSewnBlock(file.bytes, name, source);
  }
  if (source.stops?.length) {
    throw new InputError(
      'stops-of-drawing',
      '--stops',
      `${name} is a drawing and has no color stops`,
      'leave --stops away',
    );
  }
  if (source.traced !== undefined) {
    throw new InputError(
      'traced-of-drawing',
      'block.traced',
      `${name} is a drawing itself, and nothing is traced over it`,
      'leave it away, or name the stitch file that it was traced over',
      ['block', 'traced'],
    );
  }
  const { readSvgBlock } = await import('../block/read-drawing.js');
  return readSvgBlock(decodeText(file.bytes, file.path), name, source);
}
