import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkStitchFile, readStitch } from '../../src/stitches/check.js';
import { layRow } from './lay-row.js';

const guide = readFileSync(new URL('../../motifs/README.md', import.meta.url), 'utf8');
const [, example] = /```json\n([\s\S]*?)```/.exec(guide)!;

test('the stitch that the guide to writing one shows is sound, and ends on a long arm', async () => {
  expect(await checkStitchFile(example, 'tall-and-short.json')).toEqual([]);
  const unit = (await readStitch(example, 'tall-and-short')).build({});
  const arms = layRow(unit, false, 3).filter(({ name }) => name.endsWith('arm'));
  expect(arms.map(({ xy }) => xy[1][1])).toEqual([6, 3, 6, 3, 6, 3, 6]);
});
