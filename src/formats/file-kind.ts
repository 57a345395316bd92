import { InputError } from '../input-error.js';

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
