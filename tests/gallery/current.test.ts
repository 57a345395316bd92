import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fingerprint, gallery, pictures } from './pictures.js';

describe('the gallery', () => {
  test('shows what the program draws today; npm run gallery draws it anew', async () => {
    const kept = JSON.parse(readFileSync(new URL('fingerprints.json', gallery), 'utf8'));
    const drawn = await pictures();
    expect(Object.fromEntries(drawn.map((picture) => [picture.path, fingerprint(picture)]))).toEqual(kept);
    for (const { path } of drawn) expect(existsSync(new URL(path, gallery))).toBe(true);
  });
});
