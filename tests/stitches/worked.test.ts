import { describe, expect, test } from 'vitest';
import { sampleBlock } from '../../src/draw/swatch.js';
import { dress } from '../../src/dress.js';
import { defaultDressing } from '../../src/plan.js';
import { builtIn, dictionary } from './dictionary.js';

const source = { file: 'sample', stops: null, snap: 0.3, through: [] };

describe('every stitch of the dictionary can be worked', () => {
  test.each(dictionary)(
    '$name: straight, on a curve and round a corner, one stop a seam and thread',
    async ({ name, threads }) => {
      const block = await sampleBlock(name, source);
      const { design, findings } = dress(
        block,
        defaultDressing(block.map, { source, dictionary: builtIn, stitch: name }),
        builtIn,
      );
      expect(findings.filter(({ level }) => level === 'error')).toEqual([]);
      expect(design.stops).toHaveLength(3 * threads.length);
      const finite = design.stops.every(({ runs }) => runs.xy.every(Number.isFinite));
      expect(finite).toBe(true);
    },
  );
});
