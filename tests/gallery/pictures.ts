import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { drawDressed } from '../../src/draw/dressed-picture.js';
import { dress } from '../../src/dress.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { builtIn } from '../stitches/dictionary.js';
import { ornamentSheet, type Sheet, stitchSheet, treatmentSheet } from './sheet.js';

export const gallery = new URL('../../gallery/', import.meta.url);

/** One picture of the gallery: its place, and how it is drawn. */
export interface Picture {
  readonly path: string;
  draw(): Promise<string>;
}

/** Every picture of the gallery: the demo panel, and a sheet of each stitch, ornament and treatment. */
export function pictures(): Picture[] {
  const sheets = <T extends { readonly name: string }>(
    shelf: string,
    things: Iterable<T>,
    sheet: (thing: T) => Promise<Sheet>,
  ): Picture[] =>
    [...things].map((thing) => ({
      path: `${shelf}/${thing.name}.png`,
      draw: async () => {
        const { block, dressing } = await sheet(thing);
        return drawDressed(dress(block, dressing, builtIn));
      },
    }));
  return [
    { path: 'demo/panel.png', draw: drawPanel },
    ...sheets('stitches', builtIn.stitches.values(), stitchSheet),
    ...sheets('ornaments', builtIn.ornaments.values(), ornamentSheet),
    ...sheets('treatments', builtIn.treatments.values(), (treatment) => treatmentSheet(treatment, builtIn)),
  ];
}

async function drawPanel(): Promise<string> {
  const demo = new URL('demo/', gallery);
  const dressing = await readDressing(
    readFileSync(new URL('panel.dressing.json', demo), 'utf8'),
    'panel.dressing.json',
  );
  const text = readFileSync(new URL(dressing.block.file, demo), 'utf8');
  const panel = await readSvgBlock(text, dressing.block.file, dressing.block);
  return drawDressed(dress(panel, dressing, builtIn));
}

/** What a picture was drawn from, so that a stale one is noticed without comparing pixels. */
export const fingerprint = (svg: string): string => createHash('sha256').update(svg).digest('hex');
