import { describe, expect, test } from 'vitest';
import { ornamentFaults, stitchFaults } from '../../src/check/figure-sanity.js';
import { sewnFaults } from '../../src/check/sewn-faults.js';
import { craftFor } from '../../src/needle/craft.js';
import { parseStitch } from '../../src/stitches/parse.js';
import { builtIn, stitchFiles } from '../stitches/dictionary.js';

const wrong = (faults: ReturnType<typeof stitchFaults>) => faults.filter(({ level }) => level === 'wrong');
/** Every fourth one: all of them are for `library check`, which takes half a minute. */
const some = [...builtIn.stitches.values()].filter((_, i) => i % 4 === 0);

describe('how a stitch sews over all its sizes', () => {
  test.each(some)('$name sews well', (stitch) => {
    expect(wrong(stitchFaults(stitch))).toEqual([]);
  });

  test.each([...builtIn.ornaments.values()])('$name sews well', (ornament) => {
    expect(wrong(ornamentFaults(ornament))).toEqual([]);
  });

  // The laid widths of No. 40 and No. 12 are common practice: 0.4 and 0.65 mm.
  test('a stitch whose smallest size holds in No. 40 only is told the thread in which its legs merge', () => {
    const file = JSON.parse(stitchFiles.find(({ name }) => name === 'grouped-blanket')!.text);
    const apart = { ...file.parameters.apart, default: 0.5, min: 0.5 };
    const near = { ...file, parameters: { ...file.parameters, apart } };
    const faults = wrong(stitchFaults(parseStitch(near, 'near')));
    expect(faults).toEqual([
      expect.objectContaining({
        what: expect.stringMatching(/ come as near as 0.50 mm at its smallest size in No. 12$/),
        right: 'at least 0.65 mm, the width of that thread',
      }),
    ]);
  });

  test('a stitch that no seam of a block has room for is told how far it reaches; of those built in none does', () => {
    const blanket = JSON.parse(stitchFiles.find(({ name }) => name === 'blanket')!.text);
    const file = { ...blanket, points: { ...blanket.points, tip: [0, 'width + 25'] } };
    const whats = stitchFaults(parseStitch(file, 'far')).map(({ what }) => what);
    expect(whats).toContainEqual(expect.stringMatching(/^it reaches 3\d\.\d mm from the seam/));
    const reaching = [...builtIn.stitches.values()].filter((stitch) => {
      const { left, right } = stitch.build({}).reach;
      return Math.max(left, right) > 20;
    });
    expect(reaching.map(({ name }) => name)).toEqual([]);
  });

  test('arithmetic that fails at some size in range is told with that size', () => {
    const blanket = JSON.parse(stitchFiles.find(({ name }) => name === 'blanket')!.text);
    const [tip] = Object.keys(blanket.points).filter((name) => name === 'tip');
    const file = { ...blanket, points: { ...blanket.points, [tip]: [0, 'width + sqrt(width - 3.5)'] } };
    const [fault] = wrong(stitchFaults(parseStitch(file, 'odd')));
    expect(fault.what).toContain('its arithmetic gives');
    expect(fault.at).toMatch(/"width":2/);
  });
});

describe('faults of sewn thread', () => {
  const craft = craftFor('No. 40');
  const run = (...xy: number[]) => ({ xy: Float64Array.from(xy), start: Int32Array.of(0, xy.length / 2) });
  /** A line of stitches of one length, long enough that ties do not count. */
  const line = (length: number) => run(...Array.from({ length: 30 }, (_, i) => [i * length, 0]).flat());
  const told = (runs: ReturnType<typeof run>) =>
    sewnFaults(runs, craft)
      .map(({ what }) => what)
      .join();

  // Numbers: common practice for No. 40.
  test('stitches from 0.8 to 7 mm are good', () => {
    for (const length of [0.8, 2.5, 7]) expect(told(line(length))).toBe('');
  });

  test('shorter and longer ones are told, and a hole pierced seven times', () => {
    expect(told(line(0.3))).toContain('a stitch of 0.30 mm');
    expect(told(line(0.6))).toContain('% of its stitches are shorter than 0.8 mm');
    expect(told(line(7.5))).toContain('a stitch of 7.5 mm');
    const there = Array.from({ length: 7 }, (_, i) => [10, 0, 12 + i, 5]).flat();
    const quiet = (from: number) => Array.from({ length: 5 }, (_, i) => [from + i, 20]).flat();
    expect(told(run(...quiet(0), ...there, ...quiet(30)))).toContain('one hole is pierced 7 times');
  });
});
