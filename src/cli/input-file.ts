import { readFile, stat } from 'node:fs/promises';
import { InputError } from '../input-error.js';

/** Larger files are no block: a 64 MB stitch file would sew for a month. */
const LARGEST = 64 * 1024 * 1024;

/** Reads a whole file, refusing folders, devices and what is too large to be a block. */
export async function readInput(path: string): Promise<Uint8Array> {
  if (path.includes('\0')) {
    throw new InputError('bad-name', 'file name', 'holds a character no file name can', 'check the name');
  }
  // Asked before the file is opened: opening a pipe would wait for someone to write to it.
  const about = await stat(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error;
    throw new InputError('no-such-file', path || "''", 'does not exist', 'check the name and the folder');
  });
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
  return new Uint8Array(await readFile(path));
}

export type FileKind = 'drawing' | 'stitch-file' | 'record';

/** What a file is, by its content first and by its name where the content leaves it open. */
export function fileKind(path: string, bytes: Uint8Array): FileKind {
  if (bytes.length === 0)
    throw new InputError('empty-file', path, 'is empty', 'give a drawing, a stitch file or a dressing');
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 512));
  if (start.startsWith('LA:')) return 'stitch-file';
  const text = start.replace(/^(\xef\xbb\xbf|\xff\xfe|\xfe\xff)/, '').replace(/^[\s\0]+/, '');
  if (text.startsWith('<')) return 'drawing';
  if (text.startsWith('{')) return 'record';
  const name = path.toLowerCase();
  if (name.endsWith('.svg')) return 'drawing';
  if (name.endsWith('.dst')) return 'stitch-file';
  if (name.endsWith('.json')) return 'record';
  throw new InputError(
    'unknown-file',
    path,
    'is neither a drawing nor a stitch file nor a dressing',
    'give an .svg, a .dst or a .dressing.json file',
  );
}

/**
 * The text of a file: UTF-8, unless a byte order mark, or the zero byte that every plain letter has in it, tells UTF-16.
 * @throws InputError when zero bytes are left, which no text has
 */
export function decodeText(bytes: Uint8Array, path = 'the file'): string {
  const [a, b] = bytes;
  const low = (a === 0xff && b === 0xfe) || (a !== 0 && b === 0);
  const high = (a === 0xfe && b === 0xff) || (a === 0 && b !== 0);
  const text = new TextDecoder(low ? 'utf-16le' : high ? 'utf-16be' : 'utf-8').decode(bytes);
  if (!text.includes('\0')) return text;
  throw new InputError('not-text', path, 'is no text, or in an encoding not read here', 'save it as UTF-8');
}
