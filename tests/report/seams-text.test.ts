import { expect, test } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { seamsJson } from '../../src/block/seams-json.js';
import { seamsText } from '../../src/report/seams-text.js';

const svg = (
  inside: string,
) => `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">
  <rect width="100" height="80" fill="none" stroke="#000"/><path d="M0 40H100" fill="none" stroke="#000"/>${inside}
</svg>`;
const read = (inside: string) =>
  readSvgBlock(svg(inside), 'block.svg', { file: 'block.svg', stops: null, snap: 0.3, through: [] });

test('what a drawing keeps clear is listed with its place and size, and told to programs', async () => {
  const block = await read('<rect class="keep-clear" id="photo" x="20" y="10" width="30" height="15"/>');
  const row = seamsText(block)
    .split('\n')
    .find((line) => line.startsWith('photo'))!;
  expect(row.split(/\s+/)).toEqual(['photo', '20.0', '10.0', '30.0', '15.0']);
  const [{ name, boundaries }] = seamsJson(block).keepClear;
  expect(name).toBe('photo');
  const corners = boundaries.flat().map(([x, y]) => `${x} ${y}`);
  for (const corner of ['20 10', '50 10', '50 25', '20 25']) expect(corners).toContain(corner);
});

test('a drawing that keeps nothing clear has no such table', async () => {
  const block = await read('');
  expect(seamsText(block)).not.toContain('Kept clear');
  expect(seamsJson(block).keepClear).toEqual([]);
});
