import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { index } from './index-page.js';
import { fingerprint, gallery, pictures } from './pictures.js';

describe('the gallery', () => {
  const kept = JSON.parse(readFileSync(new URL('fingerprints.json', gallery), 'utf8'));
  const all = pictures();

  test('has a sheet of everything in the dictionary, and a page that names it', () => {
    expect(Object.keys(kept)).toEqual(all.map(({ path }) => path));
    expect(all.filter(({ path }) => !existsSync(new URL(path, gallery)))).toEqual([]);
    expect(readFileSync(new URL('README.md', gallery), 'utf8')).toBe(index());
  });

  test.each(all)(
    '$path shows what the program draws today; npm run gallery draws it anew',
    async ({ path, draw }) => {
      expect(fingerprint(await draw())).toBe(kept[path]);
    },
  );
});
