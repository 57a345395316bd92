import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { drawDressed } from '../../src/draw/dressed-picture.js';
import { sampleBlock } from '../../src/draw/swatch.js';
import { dress } from '../../src/dress.js';
import type { BlockSource } from '../../src/formats/dressing.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { defaultDressing } from '../../src/plan.js';
import { builtIn, dictionary } from '../stitches/dictionary.js';

export const gallery = new URL('../../gallery/', import.meta.url);

/** One picture of the gallery: its place, and its drawing. */
export interface Picture {
  readonly path: string;
  readonly svg: string;
}

/** Every picture of the gallery, drawn anew: the demo panel and a swatch of each stitch. */
export async function pictures(): Promise<Picture[]> {
  const demo = new URL('demo/', gallery);
  const dressing = await readDressing(
    readFileSync(new URL('panel.dressing.json', demo), 'utf8'),
    'panel.dressing.json',
  );
  const text = readFileSync(new URL(dressing.block.file, demo), 'utf8');
  const panel = await readSvgBlock(text, dressing.block.file, dressing.block);
  const swatches = await Promise.all(
    dictionary.map(async ({ name }): Promise<Picture> => {
      const source: BlockSource = { file: name, stops: null, snap: 0.3, through: [] };
      const block = await sampleBlock(name, source);
      const plan = defaultDressing(block.map, { source, dictionary: builtIn, stitch: name });
      return { path: `stitches/${name}.png`, svg: drawDressed(dress(block, plan, builtIn)) };
    }),
  );
  return [{ path: 'demo/panel.png', svg: drawDressed(dress(panel, dressing, builtIn)) }, ...swatches];
}

/** What a picture was drawn from, so that a stale one is noticed without comparing pixels. */
export const fingerprint = ({ svg }: Picture): string => createHash('sha256').update(svg).digest('hex');
