import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { dress } from '../../src/dress.js';
import { seamOf } from '../../src/fit/seam-reference.js';
import { onSeam, turnedRound } from '../../src/fit/turned-round.js';
import { type Dressing, MANNERS, type Treatment } from '../../src/formats/dressing.js';
import { defaultDressing } from '../../src/plan.js';
import { builtIn } from '../stitches/dictionary.js';
import { chainsOf, legPoints } from './asks.js';

const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
/** A seam across from one that runs down to another: from its upper end, which is the left one or, hardly redrawn, the right. */
const drawn = (left: number, right: number) =>
  readSvgBlock(
    `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="120mm" viewBox="0 0 200 120"><g fill="none" stroke="#000">
    <path d="M0 0H200V120H0Z"/><path d="M50 0V120"/><path d="M150 0V120"/><path d="M50 ${left}L150 ${right}"/></g></svg>`,
    'block.svg',
    source,
  );
const [before, after] = await Promise.all([drawn(60, 60.1), drawn(60.1, 60)]);
const across = before.map.seams.find(
  ({ points }) => points[1] === points[3] || Math.abs(points[1] - 60) < 1,
)!.id;
const plain = defaultDressing(before.map, { source, dictionary: builtIn, stitch: 'blanket' });

const manner = fc.constantFrom(...MANNERS, null);
const told = fc.record({
  stitch: fc.constantFrom('blanket', 'feather', 'fly', 'cretan'),
  ends: fc.oneof(manner, fc.tuple(manner, manner)),
  side: fc.constantFrom('left' as const, 'right' as const),
  reverse: fc.boolean(),
  offset: fc.integer({ min: -3, max: 3 }),
});
type Told = typeof told extends fc.Arbitrary<infer T> ? T : never;

const dressing = ({ stitch, offset, ...more }: Told): Dressing => ({
  ...plain,
  byHand: 0,
  treatments: plain.treatments.map(
    (one): Treatment =>
      one.seam.id === across
        ? { ...one, ...more, rows: [{ ...one.rows[0], stitch, offset }] }
        : // which patch is the upper one is a matter of its own
          { ...one, side: 'left' },
  ),
});

/** Where the thread of the seam goes in and out: what is worked, in whichever order the needle then takes it. mm */
function worked(block: typeof before, of: Dressing): [number, number][] {
  const { lines } = dress(block, of, builtIn);
  return legPoints(chainsOf(lines.find(({ fit }) => fit.seam === across)!.fit));
}

/** How far off the nearest of the others a place lies at the most, mm. */
const farthest = (some: readonly [number, number][], others: readonly [number, number][]): number =>
  Math.max(...some.map(([x, y]) => Math.min(...others.map(([u, v]) => Math.hypot(x - u, y - v)))));

describe('a treatment whose seam came to run the other way', () => {
  it('is of the same seam, whose start lies where its end was', () => {
    const [a, b] = [before, after].map(({ map }) => map.seams[across - 1].points);
    expect([a[0], b[0]]).toEqual([50, 150]);
    const { seam } = plain.treatments.find(({ seam: { id } }) => id === across)!;
    expect(seamOf(after.map, seam)).toBe(after.map.seams[across - 1]);
  });

  it('is sewn where it was: each end in its own manner, to the same hand, growing the same way, as far off', () => {
    fc.assert(
      fc.property(told, (one) => {
        const [was, is] = [worked(before, dressing(one)), worked(after, dressing(one))];
        expect(is).toHaveLength(was.length);
        expect(Math.max(farthest(was, is), farthest(is, was))).toBeLessThan(0.3);
      }),
      { numRuns: 24 },
    );
  });

  it('turned round twice is what it was; on a seam that runs as it did it is left as it is', () => {
    fc.assert(
      fc.property(told, (one) => {
        const treatment = dressing(one).treatments.find(({ seam: { id } }) => id === across)!;
        expect(turnedRound(turnedRound(treatment))).toEqual(treatment);
        expect(onSeam(treatment, treatment.seam, before.map.seams[across - 1])).toBe(treatment);
        expect(onSeam(treatment, treatment.seam, after.map.seams[across - 1])).toEqual(
          turnedRound(treatment),
        );
      }),
    );
  });
});
