import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readStashFile } from '../../src/cli/stash-file.js';
import { newFolder, removeFolder } from './run-cli.js';

const folder = newFolder();
afterAll(() => removeFolder(folder));

const green = 'name,color\nGr\u00fcn,#6d7743\n';
function written(content: string | Uint8Array): string {
  const path = join(folder, 'stash.csv');
  writeFileSync(path, content);
  return path;
}

describe('a stash', () => {
  it.each([
    ['UTF-8', Buffer.from(green)],
    ['UTF-8 with a mark', Buffer.from(`\uFEFF${green}`)],
    ['UTF-16', Buffer.from(`\uFEFF${green}`, 'utf16le')],
    ['lines as they end on other machines', Buffer.from(green.replaceAll('\n', '\r\n'))],
    ['columns with semicolons between them', Buffer.from(green.replaceAll(',', ';'))],
    ['columns with tabs between them', Buffer.from(green.replaceAll(',', '\t'))],
  ])('keeps every letter of a name in %s', async (_, bytes) => {
    expect(await readStashFile(written(bytes))).toEqual([
      { name: 'Gr\u00fcn', hex: '#6d7743', weight: 'No. 40' },
    ]);
  });

  // ISO/IEC 8859-1: a letter with a mark is one byte, which begins nothing in UTF-8
  it.each(['\n', '\r\n', '\r'])(
    'in Latin 1 is refused, with the line of the first letter lost (%j)',
    async (end) => {
      const path = written(Buffer.from(green.replaceAll('\n', end), 'latin1'));
      await expect(readStashFile(path)).rejects.toThrow(/stash\.csv line 2: .*; save it as UTF-8$/);
    },
  );
});
