import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildSeamMap } from '../src/block/build-seam-map.js';
import type { BlockSource } from '../src/formats/dressing.js';
import { InputError } from '../src/input-error.js';
import { defaultDressing } from '../src/plan.js';
import { cutBlock } from './bench/many-seams.js';
import { builtIn } from './stitches/dictionary.js';

const source: BlockSource = { file: 'block.svg', stops: null, snap: 0.3, through: [] };

describe('a dressing made when nothing is said', () => {
  test('gives every seam a treatment, and seams that meet different stitches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), (seed) => {
        const map = buildSeamMap(cutBlock(180, 70, seed)).map;
        const { treatments } = defaultDressing(map, { source, dictionary: builtIn });
        expect(treatments.map(({ seam }) => seam.id)).toEqual(map.seams.map(({ id }) => id));
        const stitch = new Map(treatments.map(({ seam, rows }) => [seam.id, rows[0].stitch]));
        for (const { arms } of map.junctions) {
          const seams = [...new Set(arms.map((arm) => arm.seam))].filter((seam) => seam !== 'outline');
          const worn = seams.map((seam) => stitch.get(seam));
          expect(new Set(worn).size).toBe(seams.length);
        }
      }),
    );
  });

  test('dresses only the seams named, in the stitch named', () => {
    const map = buildSeamMap(cutBlock(180, 70, 3)).map;
    const { treatments } = defaultDressing(map, {
      source,
      dictionary: builtIn,
      seams: [2, 3],
      stitch: 'fly',
      width: 6,
    });
    expect(treatments.map(({ seam }) => seam.id)).toEqual([2, 3]);
    for (const { rows } of treatments)
      expect(rows[0]).toMatchObject({ stitch: 'fly', parameters: { width: 6 } });
  });

  test('names the seams there are when one is asked for that is not there', () => {
    const map = buildSeamMap(cutBlock(180, 70, 3)).map;
    const ask = () => defaultDressing(map, { source, dictionary: builtIn, seams: [99] });
    expect(ask).toThrow(InputError);
    expect(ask).toThrow(`its seams are 1 to ${map.seams.length}`);
  });
});
