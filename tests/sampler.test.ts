import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { readSvgBlock } from '../src/block/read-drawing.js';
import { smallestHoop } from '../src/check/hoops.js';
import { account } from '../src/design/account.js';
import type { Dressing } from '../src/formats/dressing.js';
import { readDressing } from '../src/formats/dressing-file.js';
import { defaultDressing } from '../src/plan.js';
import { samplerOf } from '../src/sampler.js';
import { builtIn } from './stitches/dictionary.js';

const demo = (name: string) => readFileSync(new URL(`../gallery/demo/${name}`, import.meta.url), 'utf8');
let dressing: Dressing;
beforeAll(async () => {
  dressing = await readDressing(demo('panel.dressing.json'), 'panel.dressing.json');
});

/** Many treatments that differ in their size. */
async function many(count: number): Promise<Dressing> {
  const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
  const { map } = await readSvgBlock(demo('panel.svg'), 'panel.svg', source);
  const plain = defaultDressing(map, { source, dictionary: builtIn, stitch: 'feather' });
  const treatments = Array.from({ length: count }, (_, i) => ({
    ...plain.treatments[0],
    rows: [{ ...plain.treatments[0].rows[0], parameters: { repeat: 6 + i * 0.05 } }],
  }));
  return { ...plain, treatments };
}

describe('the sampler of a dressing', () => {
  test('works every treatment once, on a line of 60 mm, the next at least 20 mm away', () => {
    const { dressed, samples } = samplerOf(dressing, builtIn);
    const different = new Set(dressing.treatments.map(({ rows }) => JSON.stringify(rows)));
    expect(samples).toHaveLength(different.size);
    expect(samples.flatMap(({ seams }) => seams).sort()).toEqual(
      dressing.treatments.map(({ seam }) => seam.id).sort(),
    );
    const { seams } = dressed.block.map;
    const places = seams.map(({ points }) => [points[0], points[1]]);
    seams.forEach(({ points }, i) => {
      expect(points[points.length - 2] - points[0]).toBeCloseTo(60, 6);
      for (const [x, y] of places.slice(0, i)) {
        const apart = Math.abs(y - points[1]) >= 20 - 1e-6 || Math.abs(x - points[0]) >= 60 + 14;
        expect(apart).toBe(true);
      }
    });
  });

  test('knows the number of its last, wherever it begins: treatments that are alike are one', () => {
    const twice = { ...dressing, treatments: [...dressing.treatments, dressing.treatments[0]] };
    const { samples, last } = samplerOf(twice, builtIn);
    expect(last).toBe(samples[samples.length - 1].number);
    expect(last).toBeLessThan(twice.treatments.length);
    expect(samplerOf(twice, builtIn, last).samples).toHaveLength(1);
    expect(samplerOf(twice, builtIn, last + 1)).toMatchObject({ samples: [], last });
  });

  test('has the numbers first, then the treatments in their order, each in stops of its own, in one sewing field', () => {
    const { dressed, samples } = samplerOf(dressing, builtIn);
    const [numbers, ...stops] = dressed.design.stops;
    expect(numbers).toMatchObject({ title: 'Numbers', seams: [] });
    expect(stops.map(({ seams }) => seams)).toEqual(samples.map(({ line }) => [line]));
    expect(stops.map(({ title }) => /number (\d+)$/.exec(title)?.[1])).toEqual(
      samples.map(({ number }) => String(number)),
    );
    const { widthMm, heightMm } = account(dressed.design).totals;
    expect(smallestHoop({ width: widthMm, height: heightMm })?.name).toBe('130 x 180 mm');
  });

  test('leaves behind what is said of the block: hooping, order, stops for each thread, what is kept clear', () => {
    const said: Dressing = {
      ...dressing,
      hooping: { outline: true, basting: 9 },
      stopPer: 'all',
      keepClear: [{ name: 'charm', circle: { at: [30, 30], radius: 30 } }],
    };
    expect(samplerOf(said, builtIn).dressed.design).toEqual(samplerOf(dressing, builtIn).dressed.design);
  });

  test('tells how many more there are than one field takes, and goes on from where it is told', async () => {
    const dressing = await many(60);
    const first = samplerOf(dressing, builtIn);
    const [finding] = first.dressed.findings.filter(({ code }) => code === 'sampler-full');
    const next = first.samples.length + 1;
    expect(finding.message).toContain(`--from ${next} `);
    const second = samplerOf(dressing, builtIn, next);
    expect(second.samples[0].number).toBe(next);
    expect(second.samples[second.samples.length - 1].number).toBe(Math.min(60, 2 * (next - 1)));
  });
});
