import { readFileSync, statSync } from 'node:fs';
import { InputError } from '../input-error.js';

export { decodeText, type FileKind, fileKind } from '../formats/file-kind.js';

/** Larger files are no block: a 64 MB stitch file would sew for a month. */
const LARGEST = 64 * 1024 * 1024;

/** Reads a whole file, refusing folders, devices and what is too large to be a block. */
export async function readInput(path: string): Promise<Uint8Array> {
  if (path.includes('\0')) {
    throw new InputError('bad-name', 'file name', 'holds a character no file name can', 'check the name');
  }
  // Asked before the file is opened: opening a pipe would wait for someone to write to it.
  const about = statSync(path, { throwIfNoEntry: false });
  if (!about) {
    throw new InputError('no-such-file', path || "''", 'does not exist', 'check the name and the folder');
  }
  if (about.isDirectory()) throw new InputError('not-a-file', path, 'is a folder', 'name the file in it');
  if (!about.isFile()) {
    throw new InputError(
      'not-a-file',
      path,
      'is no ordinary file',
      'give a drawing, a stitch file or a dressing',
    );
  }
  if (about.size > LARGEST) {
    const size = Math.round(about.size / 1024 / 1024);
    throw new InputError('too-large', path, `is ${size} MB`, 'a block of up to 64 MB can be read');
  }
  // at once: `node:fs/promises` would have to be loaded
  return new Uint8Array(readFileSync(path));
}
