import { describe, expect, test } from 'vitest';
import { fitLines, type LineFit } from '../../src/fit/fit-lines.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
/** Stitches made of figures that stand by themselves, joined by nothing that is seen. */
const ALONE = ['ermine', 'star-stitch', 'sheaf', 'detached-wheatear', 'french-knots'];
/** Stitches whose repeats run on into each other. */
const JOINED = ['blanket', 'feather', 'cretan', 'chain'];
const lengths = Array.from({ length: 21 }, (_, i) => 1 + i / 4);

/** A free seam of so many mm from (100, 100) along +x. */
const short = (stitch: string, length: number): LineFit =>
  fitLines(
    mapOfLines([
      [
        [100, 100],
        [100 + length, 100],
      ],
    ]),
    [askFor(1, stitch)],
    RULES,
  )[0];

const codes = ({ findings }: LineFit) => findings.map(({ code }) => code);

describe('a seam too short for one repeat', () => {
  test('gets one figure of a stitch that has such, in its middle, nothing of it past the ends, and that is told', () => {
    const wrong = ALONE.flatMap((stitch) => {
      const single = lengths.filter((length) => codes(short(stitch, length)).includes('single-figure'));
      if (single.length === 0) return [`${stitch}: nowhere`];
      return single.flatMap((length) => {
        const line = short(stitch, length);
        const us = legPoints(chainsOf(line.fit)).map(([x]) => x - 100);
        const [first, last] = [Math.min(...us), Math.max(...us)];
        const isInside = first >= -1e-6 && last <= length + 1e-6;
        const isCentered = Math.abs(first + last - length) < 0.05;
        const isAlone = line.fit.stretches.length === 1 && line.fit.stretches[0].repeats <= 1;
        const isOnly = !codes(line).includes('plain-line') && !codes(line).includes('too-short');
        return isInside && isCentered && isAlone && isOnly
          ? []
          : [`${stitch}, ${length} mm: ${first} to ${last}`];
      });
    });
    expect(wrong).toEqual([]);
  });

  test('grows through figure to repeats: what is longer never gets less', () => {
    const rank = (stitch: string, length: number) => {
      const line = short(stitch, length);
      if (codes(line).includes('single-figure')) return 1;
      return line.fit.stretches.length > 0 ? 2 : 0;
    };
    for (const stitch of ALONE) {
      const ranks = lengths.map((length) => rank(stitch, length));
      expect(ranks).toEqual([...ranks].sort());
    }
  });

  test('gets none of a stitch whose repeats run on into each other', () => {
    const found = JOINED.flatMap((stitch) =>
      lengths.filter((length) => codes(short(stitch, length)).includes('single-figure')),
    );
    expect(found).toEqual([]);
  });
});
