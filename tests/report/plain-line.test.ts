import { expect, test } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import { dress } from '../../src/dress.js';
import { defaultDressing } from '../../src/plan.js';
import { dressReport } from '../../src/report/dress-report.js';
import { voronoiBlock } from '../fit/whole-blocks/voronoi-block.js';
import { builtIn } from '../stitches/dictionary.js';

/** No part of a laced row is worked by itself, so that what is too short for a repeat gets a plain line. */
test('a seam too short for one repeat is told with its plain line, and without repeats', () => {
  const { map } = buildSeamMap(voronoiBlock(201));
  const block = { name: 'block', map, existing: null, stops: [], origin: [0, 0] as const, findings: [] };
  const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
  const dressed = dress(
    block,
    defaultDressing(map, { source, dictionary: builtIn, stitch: 'laced-herringbone' }),
    builtIn,
  );
  const { stops, fits, findings } = dressReport(dressed, []);
  const plain = fits.filter(({ repeats }) => repeats === 0).map(({ seam }) => seam);
  const told = new Set(findings.filter(({ code }) => code === 'plain-line').map(({ seam }) => seam));
  const sewn = stops.filter(({ kind, seams }) => kind === 'treatment' && plain.includes(seams[0]));
  expect(sewn.length).toBeGreaterThan(0);
  expect(sewn.every(({ seams, repeats }) => repeats === undefined && told.has(seams[0]))).toBe(true);
});
