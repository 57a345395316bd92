import { InputError } from '../input-error.js';
import { END_CODE } from './dst-digits.js';
import { HEADER_LENGTH } from './dst-header.js';
import { decodeRecords } from './dst-records.js';
import type { StitchFile } from './stitch-file.js';

/** Bytes that programs put behind the end mark to fill a block: NUL, line ends, 1A, space. */
const PADDING = new Set([0x00, 0x0a, 0x0d, 0x1a, 0x20]);

/**
 * Reads a DST stitch file. Of the header only `LA:` and the name are looked at, since its numbers are often wrong; the
 * records are what counts. Behind the end mark padding is accepted and nothing else.
 * @throws InputError with the byte offset: no `LA:` at the start, a header shorter than 512 bytes, a record whose third
 * byte lacks bits 1 and 0, no end mark, other bytes behind it
 */
export function readDst(bytes: Uint8Array, where: string): StitchFile {
  if (bytes[0] !== 0x4c || bytes[1] !== 0x41 || bytes[2] !== 0x3a) {
    throw refusal(where, 0, 'the file does not begin with "LA:"', 'a DST stitch file does');
  }
  if (bytes.length < HEADER_LENGTH) {
    throw refusal(where, bytes.length, 'the file ends inside its header', 'a header is 512 bytes long');
  }
  const end = findEnd(bytes, where);
  for (let at = end + 3; at < bytes.length; at++) {
    if (!PADDING.has(bytes[at])) {
      throw refusal(where, at, 'there is something behind the end mark', 'the end mark 00 00 F3 stands last');
    }
  }
  const records = bytes.slice(HEADER_LENGTH, end);
  return { label: labelOf(bytes), ...decodeRecords(records), records };
}

function findEnd(bytes: Uint8Array, where: string): number {
  let at = HEADER_LENGTH;
  for (; at + 3 <= bytes.length; at += 3) {
    const last = bytes[at + 2];
    if ((last & 3) !== 3) {
      throw refusal(
        where,
        at + 2,
        `no stitch record ends with ${hex(last)}`,
        'the third byte of a record has its two lowest bits set',
      );
    }
    if (last === END_CODE && bytes[at] === 0 && bytes[at + 1] === 0) return at;
  }
  const wrong = at === bytes.length ? 'the file ends without an end mark' : 'the file ends inside a record';
  throw refusal(
    where,
    bytes.length,
    wrong,
    'the end mark 00 00 F3 stands last; the file may have been cut off',
  );
}

function refusal(where: string, at: number, wrong: string, right: string): InputError {
  return new InputError('not-a-dst', `${where} byte ${at}`, wrong, right);
}

const hex = (byte: number): string => byte.toString(16).toUpperCase().padStart(2, '0');

/** The name as far as the carriage return, at most 16 characters; anything unprintable in it is left out. */
function labelOf(bytes: Uint8Array): string {
  let label = '';
  for (let at = 3; at < 19 && bytes[at] !== 0x0d; at++) {
    if (bytes[at] >= 0x20 && bytes[at] < 0x7f) label += String.fromCharCode(bytes[at]);
  }
  return label.trim();
}
