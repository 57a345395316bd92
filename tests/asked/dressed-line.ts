import type { Block } from '../../src/block/block.js';
import type { Dressing, Treatment, Work } from '../../src/formats/dressing.js';
import { defaultDressing, USUAL_THREADS } from '../../src/plan.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { builtIn } from '../stitches/dictionary.js';

/** A block of a single straight seam, 80 mm long, from left to right. */
export const oneSeam: Block = {
  name: 'one seam',
  map: mapOfLines([
    [
      [30, 100],
      [110, 100],
    ],
  ]),
  existing: null,
  stops: [],
  origin: [0, 0],
  findings: [],
};

/** A dressing of that seam: blanket, unless other work is asked for. */
export function dressingOf(work: Partial<Work & Treatment> = {}, more: Partial<Dressing> = {}): Dressing {
  const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
  const plain = defaultDressing(oneSeam.map, { source, dictionary: builtIn, stitch: 'blanket' });
  return {
    ...plain,
    threads: USUAL_THREADS,
    treatments: plain.treatments.map((own) => ({ ...own, side: 'left', ...work })),
    ...more,
  };
}
