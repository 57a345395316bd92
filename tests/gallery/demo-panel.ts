import { readFileSync } from 'node:fs';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { type Dressed, dress } from '../../src/dress.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { builtIn } from '../stitches/dictionary.js';

/** The demo panel, dressed as its dressing says, or as that is changed. */
export async function demoPanel(change = (dressing: Dressing): Dressing => dressing): Promise<Dressed> {
  const folder = new URL('../../gallery/demo/', import.meta.url);
  const read = (name: string) => readFileSync(new URL(name, folder), 'utf8');
  const dressing = await readDressing(read('panel.dressing.json'), 'panel.dressing.json');
  const block = await readSvgBlock(read(dressing.block.file), dressing.block.file, dressing.block);
  return dress(block, change(dressing), builtIn);
}
