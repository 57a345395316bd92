import { describe, expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import type { LineFit } from '../../src/fit/line-fit.js';
import { dictionary } from '../stitches/dictionary.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
/** Stitches made of figures that stand by themselves, joined by nothing that is seen. */
const ALONE = ['ermine', 'star-stitch', 'sheaf', 'detached-wheatear', 'french-knots'];
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

/** A seam of so many mm between two that stay bare. */
const rung = (stitch: string, length: number): LineFit => {
  const map = mapOfLines([
    [
      [100, 60],
      [100, 140],
    ],
    [
      [100 + length, 60],
      [100 + length, 140],
    ],
    [
      [100, 100],
      [100 + length, 100],
    ],
  ]);
  const { id } = map.seams.find(({ points }) => Math.abs(points[1] - points[points.length - 1]) < 1)!;
  return fitLines(map, [askFor(id, stitch)], RULES)[0];
};

const codes = ({ findings }: LineFit) => findings.map(({ code }) => code);

describe('a seam too short for one repeat', () => {
  test('gets one figure of a stitch that has such, in its middle, nothing of it past the ends, and that is told', () => {
    const wrong = ALONE.flatMap((stitch) => {
      const single = lengths.filter((length) => codes(short(stitch, length)).includes('single-figure'));
      // a whole repeat that fits all seams long enough to be dressed leaves no need of one
      const isBare = lengths.some(
        (length) => length >= 3 && short(stitch, length).fit.stretches.length === 0,
      );
      if (single.length === 0 && isBare) return [`${stitch}: nowhere`];
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

  test('gets a part of a repeat that a hand would work by itself, where repeats are long', () => {
    const seen = (stitch: string, length: number) =>
      chainsOf(rung(stitch, length).fit).flatMap(({ kind }) => kind.filter((one) => one !== 'under'));
    for (const length of [3.2, 4, 5, 6]) {
      // one petal, in two halves, and the stitch that holds it (L. I. Baldt 1916, figures 235 to 238)
      expect(seen('lazy-daisy', length)).toEqual(['loop', 'loop', 'straight']);
      expect(seen('lazy-daisy-clusters', length)).toEqual(['loop', 'loop', 'straight']);
      // three arms on their edge
      expect(seen('grouped-blanket', length)).toEqual(new Array(5).fill('curve'));
    }
    // a fly: two arms and what ties them down (common practice: an anchor stitch holds the open loop)
    expect(seen('stacked-fly', 3).slice(-3)).toEqual(['curve', 'curve', 'straight']);
    // two threads that cross
    expect(seen('double-herringbone', 6)).toEqual(['straight', 'straight']);
  });

  test('gets a slimmer figure where strokes can stand more upright: a cross of herringbone without its lacing, a wing with what holds it', () => {
    const kinds = (stitch: string, length: number) =>
      chainsOf(rung(stitch, length).fit).flatMap(({ kind }) => kind.filter((one) => one !== 'under'));
    // two threads that cross, each sewn once, whatever else the stitch has a second thread for
    for (const length of [4.5, 5, 6, 7, 8, 9]) {
      expect(kinds('laced-herringbone', length)).toEqual(['straight', 'straight']);
    }
    for (const stitch of ['tied-herringbone', 'double-herringbone']) {
      for (const length of [3.5, 4, 4.5]) expect(kinds(stitch, length)).toEqual(['straight', 'straight']);
    }
    for (const length of [4.5, 5, 5.5]) {
      expect(kinds('closed-feather', length)).toEqual(['curve', 'curve', 'straight']);
    }
    // narrower room, narrower figure; no figure loses its height
    const size = (stitch: string, length: number, k: 0 | 1) => {
      const values = legPoints(chainsOf(rung(stitch, length).fit)).map((point) => point[k]);
      return Math.max(...values) - Math.min(...values);
    };
    for (const stitch of ['laced-herringbone', 'double-herringbone', 'tied-herringbone']) {
      for (const length of [4.5, 5]) {
        expect(size(stitch, length, 0)).toBeLessThanOrEqual(length + 1e-6);
        expect(size(stitch, length, 1)).toBeGreaterThan(4);
      }
    }
  });

  test('does not press what is round: petals, loops and flowers stay as they are or give way to a plain line', () => {
    for (const stitch of ['feathered-chain', 'braid', 'knotted-chain']) {
      expect(codes(rung(stitch, 4))).toContain('plain-line');
    }
    // nor strokes so far that they lie on each other
    for (const { name } of dictionary) {
      const line = rung(name, 2.2);
      if (!codes(line).includes('single-figure')) continue;
      const us = legPoints(chainsOf(line.fit)).map(([x]) => x);
      expect(Math.max(...us) - Math.min(...us)).toBeLessThan(2.2 + 1e-6);
      expect(chainsOf(line.fit).length).toBeGreaterThan(0);
    }
  });

  test('is never left without any thread when it is over 3 mm, nor with one half of a loop, nor promised a figure that is not sewn', () => {
    const wrong = dictionary.flatMap(({ name: stitch }) =>
      [2, 3.2, 4, 5, 6, 8, 10, 12].flatMap((length) => {
        const line = rung(stitch, length);
        const chains = chainsOf(line.fit);
        const legs = chains.flatMap(({ kind }) => kind.filter((one) => one !== 'under'));
        const loops = chains.map(({ kind }) => kind.filter((one) => one === 'loop').length);
        const isPromised = codes(line).includes('single-figure');
        const isBare = legs.length === 0 && (length > 3 || isPromised);
        return isBare || loops.some((halves) => halves % 2 === 1) ? [`${stitch}, ${length} mm`] : [];
      }),
    );
    expect(wrong).toEqual([]);
  });

  test('gets a plain line rather than a dot or a lone stroke that runs on', () => {
    for (const stitch of ['running', 'french-knots', 'closed-feather']) {
      expect(codes(rung(stitch, 4))).toContain('plain-line');
    }
  });
});
