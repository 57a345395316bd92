import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeCsv } from '../../src/formats/csv.js';

/** Reads comma-separated values by the grammar of RFC 4180, section 2, letter by letter. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const letter = text[i];
    if (quoted && letter === '"' && text[i + 1] === '"') {
      field += letter;
      i++;
    } else if (letter === '"') quoted = !quoted;
    else if (quoted) field += letter;
    else if (letter === ',') {
      row.push(field);
      field = '';
    } else if (letter === '\r' && text[i + 1] === '\n') {
      rows.push([...row, field]);
      [row, field] = [[], ''];
      i++;
    } else field += letter;
  }
  return rows;
}

describe('comma-separated values (RFC 4180)', () => {
  test('hold any text, read back as it was', () => {
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: fc.constantFrom('"', ',', '\r', '\n', 'a', 'ä', ' ') }),
    );
    const rows = fc.array(fc.array(text, { minLength: 1, maxLength: 5 }), { maxLength: 6 });
    fc.assert(
      fc.property(rows, (all) => {
        expect(readCsv(writeCsv(all))).toEqual(all);
      }),
    );
  });

  test('look as the RFC shows them: "aaa","b CRLF bb","ccc" and doubled quotes (section 2, rules 6 and 7)', () => {
    expect(writeCsv([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(writeCsv([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n');
  });
});
