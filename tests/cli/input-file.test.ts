import { describe, expect, it } from 'vitest';
import { decodeText, fileKind } from '../../src/cli/input-file.js';

const text = '<svg xmlns="http://www.w3.org/2000/svg"><title>B\u00e4nder</title></svg>';
const littleEnd = (word: string) => Buffer.from(word, 'utf16le');
const bigEnd = (word: string) => Buffer.from(word, 'utf16le').swap16();

describe('text of a file', () => {
  // RFC 2781 section 3: UTF-16 with and without a byte order mark, in both orders
  it.each([
    ['UTF-8', Buffer.from(text, 'utf8')],
    ['UTF-8 with a mark', Buffer.from(`\uFEFF${text}`, 'utf8')],
    ['UTF-16, low byte first, with a mark', littleEnd(`\uFEFF${text}`)],
    ['UTF-16, high byte first, with a mark', bigEnd(`\uFEFF${text}`)],
    ['UTF-16, low byte first', littleEnd(text)],
    ['UTF-16, high byte first', bigEnd(text)],
  ])('is read in %s, and known as a drawing', (_, bytes) => {
    expect(decodeText(bytes, 'x')).toBe(text);
    expect(fileKind('x', bytes)).toBe('drawing');
  });

  it('is refused where zero bytes are left', () => {
    expect(() => decodeText(Buffer.from('<svg\0/>'), 'x.svg')).toThrow('x.svg: is no text');
  });
});
