import { readFileSync } from 'node:fs';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { type Dressed, dress } from '../../src/dress.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { builtIn } from '../stitches/dictionary.js';

/** The demo panel, dressed as its dressing says. */
export async function demoPanel(): Promise<Dressed> {
  const folder = new URL('../../gallery/demo/', import.meta.url);
  const read = (name: string) => readFileSync(new URL(name, folder), 'utf8');
  const dressing = await readDressing(read('panel.dressing.json'), 'panel.dressing.json');
  const block = await readSvgBlock(read(dressing.block.file), dressing.block.file, dressing.block);
  return dress(block, dressing, builtIn);
}
