import { createHash } from 'node:crypto';
import { LIMITS } from '../../src/check/density/limits.js';
import { drawDressed } from '../../src/draw/dressed-picture.js';
import { drawOverlays } from '../../src/draw/overlays/overlay-picture.js';
import { workOfDressed } from '../../src/draw/overlays/work-of-dressed.js';
import { dress } from '../../src/dress.js';
import { builtIn } from '../stitches/dictionary.js';
import { demoPanel } from './demo-panel.js';
import { ornamentSheet, type Sheet, stitchSheet, treatmentSheet } from './sheet.js';

export const gallery = new URL('../../gallery/', import.meta.url);

/** One picture of the gallery: its place, and how it is drawn. */
export interface Picture {
  readonly path: string;
  draw(): Promise<string>;
}

/** Every picture of the gallery: the demo panel and its density, and a sheet of each stitch, ornament and treatment. */
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
    { path: 'demo/panel.png', draw: async () => drawDressed(await demoPanel()) },
    { path: 'demo/density.png', draw: drawDensity },
    ...sheets('stitches', builtIn.stitches.values(), stitchSheet),
    ...sheets('ornaments', builtIn.ornaments.values(), ornamentSheet),
    ...sheets('treatments', builtIn.treatments.values(), (treatment) => treatmentSheet(treatment, builtIn)),
  ];
}

/** How dense the stitches of the demo panel stand, as `check` draws it. */
const drawDensity = async (): Promise<string> =>
  drawOverlays(workOfDressed(await demoPanel()), new Set(['density']), LIMITS.firm);

/** What a picture was drawn from, so that a stale one is noticed without comparing pixels. */
export const fingerprint = (svg: string): string => createHash('sha256').update(svg).digest('hex');
