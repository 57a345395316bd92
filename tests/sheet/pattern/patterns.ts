import { readFileSync } from 'node:fs';
import { readSvgBlock } from '../../../src/block/read-drawing.js';
import { type Dressed, dress } from '../../../src/dress.js';
import type { Dressing } from '../../../src/formats/dressing.js';
import { defaultDressing } from '../../../src/plan.js';
import { builtIn } from '../../stitches/dictionary.js';

const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
const drawing = readFileSync(new URL('../../../gallery/demo/panel.svg', import.meta.url), 'utf8');

/** Saved treatments that between them have knots, petals, loops, cords, ribbon, beads, waves and two threads, seam by seam. */
export const RICH = [
  'feather-beads',
  'herringbone-over-ribbon',
  'waves-of-feather',
  'daisy-sprigs-knots',
  'blankets-back-to-back-knots',
  'cretan-buttons',
  'interlaced-chains',
] as const;

/** The demo panel with those treatments on its seams in turn, an edge, and a daisy in its roomiest patch. */
export async function richPanel(): Promise<Dressed> {
  const block = await readSvgBlock(drawing, 'panel.svg', source);
  const plain = defaultDressing(block.map, { source, dictionary: builtIn, edge: 'blanket' });
  const threads: Dressing['threads'][number][] = [...plain.threads];
  const treatments = plain.treatments.map((treatment, t) => {
    if (treatment.seam.id === 'outline') return treatment;
    const { threads: own, ...saved } = builtIn.treatments.get(RICH[t % RICH.length])!;
    const from = threads.length;
    threads.push(...own);
    const shifted = <T extends { thread: number; moreThreads?: readonly number[] }>(one: T): T => ({
      ...one,
      thread: one.thread + from,
      ...(one.moreThreads && { moreThreads: one.moreThreads.map((index) => index + from) }),
    });
    return {
      ...treatment,
      rows: saved.rows.map(shifted),
      accents: saved.accents?.map(shifted),
      laid: saved.laid && { ...saved.laid, thread: saved.laid.thread + from },
      guide: saved.guide,
    };
  });
  const ornaments: Dressing['ornaments'] = [
    { ornament: 'daisy', patch: 5, parameters: {}, thread: 0, moreThreads: [1], passes: 3 },
  ];
  return dress(block, { ...plain, treatments, threads, ornaments }, builtIn);
}
