import { basename } from 'node:path';
import type { Block } from '../block/block.js';
import type { BlockSource } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import { type FileKind, fileKind, readInput } from './input-file.js';

/** A block's file, read but not yet understood. */
export interface BlockFile {
  readonly path: string;
  readonly kind: Exclude<FileKind, 'record'>;
  readonly bytes: Uint8Array;
}

export async function readBlockFile(path: string): Promise<BlockFile> {
  return blockFile(path, await readInput(path));
}

/** A file already read, as a block's file if it is one. */
export function blockFile(path: string, bytes: Uint8Array): BlockFile {
  const kind = fileKind(path, bytes);
  if (kind === 'record') {
    throw new InputError(
      'not-a-block',
      path,
      'is neither a drawing nor a stitch file',
      'give an .svg or a .dst file',
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
    const { readStitchBlock } = await import('../block/read-stitch-file.js');
    return readStitchBlock(file.bytes, name, source);
  }
  if (source.stops?.length) {
    throw new InputError(
      'stops-of-drawing',
      '--stops',
      `${name} is a drawing and has no color stops`,
      'leave --stops away',
    );
  }
  const { readSvgBlock } = await import('../block/read-drawing.js');
  return readSvgBlock(decodeText(file), name, source);
}

/** UTF-8 unless a byte order mark says UTF-16. */
function decodeText({ bytes }: BlockFile): string {
  const [a, b] = bytes;
  const coding = a === 0xff && b === 0xfe ? 'utf-16le' : a === 0xfe && b === 0xff ? 'utf-16be' : 'utf-8';
  return new TextDecoder(coding).decode(bytes);
}
