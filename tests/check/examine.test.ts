import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { stitchesOf, stitchesOfRecords } from '../../src/check/density/sewn-stitches.js';
import { lengthFindings, stitchLengths } from '../../src/check/stitch-lengths.js';
import { account } from '../../src/design/account.js';
import { writeDesign } from '../../src/design/write-design.js';
import { type Dressed, dress } from '../../src/dress.js';
import { examineDressed } from '../../src/examine-dressed.js';
import { readDst } from '../../src/formats/dst-read.js';
import { defaultDressing } from '../../src/plan.js';
import { checkReport, checkText } from '../../src/report/check-report.js';
import { builtIn } from '../stitches/dictionary.js';

const panel = readFileSync(new URL('../../gallery/demo/panel.svg', import.meta.url), 'utf8');
let dressed: Dressed;
beforeAll(async () => {
  const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
  const block = await readSvgBlock(panel, 'panel.svg', source);
  dressed = dress(block, defaultDressing(block.map, { source, dictionary: builtIn }), builtIn);
});

describe('a look at the stitches of a dressed block', () => {
  test('sees every stitch of the stitch file, each in its stop', () => {
    const { stitches } = examineDressed(dressed);
    expect(stitches.stops.map(({ from, to }) => to - from)).toEqual(
      account(dressed.design).stops.map((stop) => stop.stitches),
    );
  });

  test('sees the same stitches in the block as in the file that is written', () => {
    const ofBlock = stitchesOf(dressed.design);
    const ofFile = stitchesOfRecords(readDst(writeDesign(dressed.design), 'panel.dst').records);
    const [x, y] = dressed.design.origin;
    const moved = ofBlock.ends.map((value, i) => value + (i % 2 ? y : x));
    expect(ofFile.ends.every((value, i) => Math.abs(value - moved[i]) < 1e-9)).toBe(true);
    expect(ofFile.stops).toEqual(ofBlock.stops);
  });

  test('finds the demo sewable: no finding is an error, and no band looks machine-made', () => {
    const { findings } = examineDressed(dressed);
    expect(findings.filter(({ level, code }) => level === 'error' || code === 'full-cover')).toEqual([]);
    expect(findings.length).toBeLessThan(8);
  });

  test('of a block on which nothing is sewn tells so', () => {
    const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
    const plan = defaultDressing(dressed.block.map, { source, dictionary: builtIn, seams: [] });
    const bare = dress(dressed.block, { ...plan, treatments: [] }, builtIn);
    const examined = examineDressed(bare);
    expect(examined.density.stops).toEqual([]);
    expect(checkText('panel', checkReport(examined, null, []))).toContain('0 stitches in 0 color stops');
  });

  test('is told in a table with a line for each stop', () => {
    const examined = examineDressed(dressed);
    const text = checkText('panel', checkReport(examined, null, dressed.findings));
    for (const { title } of examined.stops) expect(text).toContain(title);
  });
});

describe('lengths of stitches', () => {
  const row = (lengths: readonly number[]) => {
    const at = lengths.map((_, i) => lengths.slice(0, i).reduce((sum, length) => sum + length, 0));
    const ends = Float64Array.from(lengths.flatMap((length, i) => [at[i], 0, at[i] + length, 0]));
    return { ends, stops: [{ from: 0, to: lengths.length, width: 0.4 }] };
  };

  test('are told from the shortest to the longest', () => {
    expect(stitchLengths(row([1, 2, 6]))).toEqual({ min: 1, max: 6, mean: 3 });
    expect(stitchLengths(row([]))).toEqual({ min: 0, max: 0, mean: 0 });
  });

  test('below 0.4 mm may break the thread, above 9 mm snag (common practice)', () => {
    expect(lengthFindings(row([0.4, 2, 9]))).toEqual([]);
    expect(lengthFindings(row([0.3, 0.2, 2])).map(({ code }) => code)).toEqual(['short-stitches']);
    const [long] = lengthFindings(row([10, 2]));
    expect(long).toMatchObject({ code: 'long-stitches', stop: 1 });
    expect(long.message).toContain('one stitch longer than 9 mm');
  });
});
