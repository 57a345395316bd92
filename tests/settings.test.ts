import { describe, expect, test } from 'vitest';
import type { Block } from '../src/block/block.js';
import { dress } from '../src/dress.js';
import type { BlockSource, Dressing } from '../src/formats/dressing.js';
import type { Point } from '../src/geometry/point.js';
import { toPoints } from '../src/geometry/polyline.js';
import { mixDressing } from '../src/harmony/mix.js';
import { defaultDressing } from '../src/plan.js';
import { type Setting, withBare, withSettings } from '../src/settings.js';
import { box, mapOf } from './block/draw.js';
import { builtIn } from './stitches/dictionary.js';

const source: BlockSource = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
/** Seam 1 runs down the middle, 2 and 3 butt into it, level. */
const lines: Point[][] = [
  box(0, 0, 160, 120),
  [
    [80, 0],
    [80, 120],
  ],
  [
    [0, 40],
    [80, 40],
  ],
  [
    [80, 80],
    [160, 80],
  ],
];
const map = mapOf(lines);
const block: Block = { name: 'block', map, existing: null, stops: [], origin: [0, 0], findings: [] };
const plan = defaultDressing(map, { source, dictionary: builtIn, stitch: 'blanket', edge: 'running' });

const set = (...words: string[]): Setting[] =>
  words.map((word) => {
    const [line, what, value] = word.split(/[:=]/);
    return { line: line === 'edge' ? 'outline' : Number(line), what, value };
  });
const settled = (...words: string[]): Dressing => withSettings(plan, set(...words), map, builtIn);
/** Needle points of what a seam gets. */
const sewn = (dressing: Dressing, seam: number): Point[] =>
  dress(block, dressing, builtIn)
    .design.stops.filter(({ seams }) => seams.includes(seam))
    .flatMap(({ runs }) => toPoints(runs.xy));
const ys = (points: readonly Point[]): number[] => points.map(([, y]) => y);

describe('what the maker says of one seam', () => {
  test('puts the arms on the side she names, as wide as she says', () => {
    // seam 2 runs from the left to the right at y = 40, so left of it is above
    const left = ys(sewn(settled('2:side=left', '2:width=7'), 2));
    expect(Math.min(...left)).toBeCloseTo(33, 0);
    expect(Math.max(...left)).toBeLessThan(41);
    const right = ys(sewn(settled('2:side=right', '2:width=7'), 2));
    expect(Math.max(...right)).toBeCloseTo(47, 0);
    expect(ys(sewn(settled('2:side=right', '2:width=7'), 3))).toEqual(ys(sewn(plan, 3)));
  });

  test('sets its repeat, its weight and its end', () => {
    const fitOf = (dressing: Dressing) =>
      dress(block, dressing, builtIn).lines.find((one) => one.fit.seam === 2)!.fit;
    expect(fitOf(settled('2:repeat=10')).wanted).toBe(10);
    expect(fitOf(settled('2:ends=short')).endGap[1]).toBeGreaterThan(fitOf(plan).endGap[1] + 0.5);
    expect(sewn(settled('2:passes=5'), 2).length).toBeGreaterThan(1.4 * sewn(plan, 2).length);
  });

  test('ends it in another manner at its start than at its end', () => {
    // it begins at the edge and ends at seam 1, which runs through
    const fitOf = (...words: string[]) =>
      dress(block, settled(...words), builtIn).lines.find((one) => one.fit.seam === 2)!.fit;
    const [short, tuck] = [fitOf('2:ends=short'), fitOf('2:ends=tuck')];
    const both = fitOf('2:ends=tuck,short');
    expect(both.endGap[0]).toBeCloseTo(tuck.endGap[0], 2);
    expect(both.endGap[1]).toBeCloseTo(short.endGap[1], 2);
    expect(fitOf('2:ends=short,tuck').endGap[1]).toBeCloseTo(tuck.endGap[1], 2);
  });

  test('turns the direction it grows in: what was sewn from the left is as sewn from the right', () => {
    const fly = (...more: string[]) => sewn(settled('2:stitch=fly', ...more), 2).map(([x]) => x);
    expect(fly('2:reverse=yes')).not.toEqual(fly());
    expect(fly('2:reverse=no')).toEqual(fly());
  });

  test('gives it another stitch, alone, and another thread', () => {
    const { treatments, threads } = settled('3:stitch=Herringbone', '3:thread=#8b0000', 'edge:passes=2');
    expect(treatments.find(({ seam }) => seam.id === 'outline')!.rows[0].passes).toBe(2);
    const third = treatments.find(({ seam }) => seam.id === 3)!;
    expect(third.rows.map(({ stitch }) => stitch)).toEqual(['herringbone']);
    expect(threads[third.rows[0].thread].hex).toBe('#8b0000');
    expect(third.pinned).toBe(true);
    expect(treatments.find(({ seam }) => seam.id === 1)!.pinned).toBeUndefined();
    expect(plan.threads).toHaveLength(threads.length - 1);
  });

  test.each([
    ['9:side=left', /--set 9:side=left: the block has no such seam; its seams are 1 to 3/],
    ['2:ends=tuck,knot', /'tuck,knot' is no choice; choose tuck, bevel, short, or two of them for its start/],
    ['2:ends=', /'' is no choice/],
    ['2:side=up', /'up' is no choice; choose left, right/],
    ['2:passes=2.5', /'2.5' is not possible; give a whole number from 1 to 20/],
    ['2:heavy=pearl-3', /'pearl-3' is no choice; choose one-strand, two-strands, pearl-8, pearl-5/],
    ['2:witdh=4', /"witdh" is nothing that blanket has; set stitch, side, .*width/],
    ['2:width=900', /'900' is not possible; give a number from/],
    ['2:stitch=fether', /did you mean "feather"/],
  ])('is refused when it is %s', (word, says) => {
    expect(() => settled(word)).toThrow(says);
  });

  test('says how heavy it is in one way: in passes or as a thread of a hand', () => {
    const rowOf = (...words: string[]) =>
      settled(...words).treatments.find(({ seam }) => seam.id === 2)!.rows[0];
    expect(rowOf('2:heavy=pearl-8').passes).toBeUndefined();
    expect(rowOf('2:heavy=pearl-8').heavy).toBe('pearl-8');
    expect(rowOf('2:heavy=pearl-8', '2:stitch=fly')).toMatchObject({ stitch: 'fly', heavy: 'pearl-8' });
    expect(() => settled('1:passes=2', '2:passes=2', '2:heavy=pearl-8')).toThrow(
      '--set 2:heavy=pearl-8: stands beside --set 2:passes=2, which says how heavy it is too; leave one of them away',
    );
  });

  test('is refused for a seam that is not dressed', () => {
    const without = withBare(plan, [2], map);
    expect(() => withSettings(without, set('2:side=left'), map, builtIn)).toThrow(
      'seam 2 is not dressed; dress it, or leave this away',
    );
  });
});

describe('a seam left bare', () => {
  test('has no treatment, and gets none when the block is mixed', () => {
    const bare = withBare(plan, [2], map);
    expect(bare.treatments.map(({ seam }) => seam.id)).toEqual([1, 3, 'outline']);
    expect(sewn(bare, 2)).toEqual([]);
    const mixed = mixDressing(map, bare, builtIn, { seed: 3, threads: 1 }).dressing;
    expect(mixed.treatments.map(({ seam }) => seam.id)).toEqual([1, 3, 'outline']);
    expect(mixed.bare?.map(({ id }) => id)).toEqual([2]);
    expect(withBare(mixed, [2], map).bare).toHaveLength(1);
  });

  test('is known again by its place when the block is redrawn', () => {
    const more = mapOf([
      ...lines,
      [
        [0, 10],
        [80, 10],
      ],
    ]);
    const bare = withBare(plan, [2], map);
    const mixed = mixDressing(more, bare, builtIn, { seed: 3, threads: 1 }).dressing;
    const dressed = mixed.treatments.map(({ seam }) => seam.id);
    // the new seam is number 2 now, and the bare one number 3
    expect(dressed).toContain(2);
    expect(dressed).not.toContain(3);
  });
});
