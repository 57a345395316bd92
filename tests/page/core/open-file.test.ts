import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { openFile } from '../../../page/core/open-file.js';

const demo = new URL('../../../gallery/demo/', import.meta.url);
const svg = readFileSync(new URL('panel.svg', demo));
const saved = JSON.parse(readFileSync(new URL('panel.dressing.json', demo), 'utf8'));

/** The demo's dressing, with the digest of a file of which it was saved. */
const dressingOf = (of: Uint8Array) => {
  const { svg: _, ...block } = saved.block;
  const digest = `sha256:${createHash('sha256').update(of).digest('hex')}`;
  const text = JSON.stringify({ ...saved, block: { ...block, file: 'panel.svg', digest } });
  return { name: 'panel.dressing.json', bytes: new TextEncoder().encode(text) };
};
const block = { name: 'panel.svg', bytes: new Uint8Array(svg) };
const another = new TextEncoder().encode(`${svg} `);

describe('a dressing opened with its block', () => {
  test('tells when the file is another than when it was saved, in whichever order both are given', async () => {
    for (const [of, isChanged] of [
      [block.bytes, false],
      [another, true],
    ] as const) {
      const dressing = dressingOf(of);
      expect((await openFile(dressing, block, new Map())).isChanged).toBe(isChanged);
      expect((await openFile(block, dressing, new Map())).isChanged).toBe(isChanged);
    }
  });

  test('says nothing of a block that was never saved', async () => {
    expect((await openFile(block, undefined, new Map())).isChanged).toBe(false);
  });
});
