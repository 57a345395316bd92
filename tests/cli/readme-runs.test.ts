import { mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { newFolder, removeFolder, seamwright } from './run-cli.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const readme = readFileSync(join(root, 'README.md'), 'utf8');
/** Runs as README shows them: a line "$ npx seamwright ...", and what is printed. */
const runs = [...readme.matchAll(/^\$ npx seamwright (.*)\n((?:(?!\$ |```).*\n)*)/gm)].map(
  ([, words, printed]) => ({ words, printed: printed.trim() }),
);

const folder = newFolder();
beforeAll(() => {
  mkdirSync(join(folder, 'gallery'));
  symlinkSync(join(root, 'gallery/demo'), join(folder, 'gallery/demo'));
});
afterAll(() => removeFolder(folder));

it('README shows runs gone wrong and one gone right', () => expect(runs).toHaveLength(3));

it.each(runs)(
  '$words prints what README shows',
  async ({ words, printed }) => {
    const { stdout, stderr } = await seamwright(folder, ...words.split(' '));
    expect(`${stdout}${stderr}`.trim()).toBe(printed);
  },
  60_000,
);
