import type { SeamMap } from '../../../src/block/seam-map.js';
import type { Dressing, Manner, Treatment } from '../../../src/formats/dressing.js';
import { defaultDressing, USUAL_THREADS } from '../../../src/plan.js';
import type { Stitch } from '../../../src/stitches/stitch.js';
import { seeded } from '../../bench/many-seams.js';
import { builtIn } from '../../stitches/dictionary.js';

const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };

/**
 * Every seam gets a stitch of the dictionary at a size of its own, or one of three a saved treatment with its rows and
 * accents. Seeded.
 */
export function randomDressing(map: SeamMap, seed: number, ends: Manner): Dressing {
  const random = seeded(15485863 * seed);
  for (let k = 0; k < 10; k++) random();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const stitches = [...builtIn.stitches.values()];
  const saved = [...builtIn.treatments.values()];
  const plain = defaultDressing(map, { source, dictionary: builtIn, stitch: 'blanket', ends });
  const treatments = plain.treatments.map((own): Treatment => {
    const reverse = random() < 0.5;
    const side = pick([null, 'left', 'right'] as const);
    if (random() < 1 / 3) {
      const { rows, accents, laid, guide } = pick(saved);
      return {
        ...own,
        reverse,
        side,
        rows,
        ...(accents && { accents }),
        ...(laid && { laid }),
        ...(guide && { guide }),
      };
    }
    const stitch = pick(stitches);
    const parameters = {
      repeat: between(stitch, 'repeat', random()),
      width: between(stitch, 'width', random()),
    };
    return { ...own, reverse, side, rows: [{ ...own.rows[0], stitch: stitch.name, parameters }] };
  });
  return { ...plain, treatments, threads: USUAL_THREADS };
}

/** A size between the smallest good one and half as much again as the usual one. */
function between(stitch: Stitch, name: 'repeat' | 'width', share: number): number {
  const { min, max, default: usual } = stitch.parameters.find((parameter) => parameter.name === name)!;
  const least = Math.max(min, stitch.smallest[name]);
  const most = Math.max(least, Math.min(max, 1.5 * usual));
  return least + share * (most - least);
}
