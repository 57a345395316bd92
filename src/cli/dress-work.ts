import type { Block } from '../block/block.js';
import type { Dressing } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import { decodeText } from './input-file.js';
import type { BlockFile } from './read-block.js';

/** A block as read, what it is to be dressed in, and where both come from. */
export interface DressWork {
  readonly block: Block;
  readonly dressing: Dressing;
  /** the file the block was read from; null where it was read from the dressing itself */
  readonly file: BlockFile | null;
  readonly saved: SavedDressing | null;
}

/** A dressing as read: where from, and its text. */
export interface SavedDressing {
  readonly path: string;
  readonly text: string;
  readonly dressing: Dressing;
}

/** What is wrong with a saved dressing names its file, and the line in it. */
export async function inSaved<T>(saved: SavedDressing | null, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    // what an option asks for is no mistake of the file
    if (!(error instanceof InputError) || saved === null || error.where.startsWith('--')) throw error;
    const line = error.path.length
      ? ` line ${await (await import('../formats/json-place.js')).lineInJson(saved.text, error.path)},`
      : '';
    throw new InputError(error.code, `${saved.path}${line} ${error.where}`, error.wrong, error.right);
  }
}

/**
 * The text of the drawing that the dressing is to hold.
 * @throws InputError when the file is no drawing
 */
export function heldText(file: BlockFile): string {
  if (file.kind === 'drawing') return decodeText(file.bytes, file.path);
  throw new InputError(
    'embed-stitch-file',
    '--embed',
    `${file.path} is a stitch file; a dressing can hold a drawing`,
    'leave --embed away',
  );
}
