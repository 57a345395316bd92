import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bareEnds, type SewnSeam } from '../../src/check/bare-ends.js';
import { dress } from '../../src/dress.js';
import type { Runs } from '../../src/needle/run.js';
import { defaultDressing } from '../../src/plan.js';
import { butting, mapOfLines } from '../fit/block-of-lines.js';
import { builtIn } from '../stitches/dictionary.js';

type XY = readonly [number, number];

/** A line of stitches of at most 2 mm. */
function sewnLine([ax, ay]: XY, [bx, by]: XY): Runs {
  const pieces = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / 2));
  const xy = Float64Array.from({ length: 2 * (pieces + 1) }, (_, i) => {
    const t = (i >> 1) / pieces;
    return i % 2 ? ay + t * (by - ay) : ax + t * (bx - ax);
  });
  return { xy, start: Int32Array.of(0, pieces + 1) };
}

/** Length that a finding names, mm. */
const told = (message: string) => Number(/([\d.]+) mm/.exec(message)![1]);

describe('a bare end', () => {
  /** A seam of 70 mm that butts into another at (100, 100), from below, which has thread `up` mm below itself. */
  const block = (theta: number, begins: number, up: number, more: Partial<SewnSeam> = {}) => {
    const map = butting(theta);
    const through = map.junctions[0].through!;
    const seam = 3 - through;
    const [ux, uy] = [Math.cos(theta), Math.sin(theta)];
    const at = (u: number): XY => [100 + u * ux, 100 + u * uy];
    const own = [sewnLine(at(begins), at(70))];
    const covering = [sewnLine([60, 100 + up], [140, 100 + up])];
    const sewn: SewnSeam = { seam, reach: 3, repeats: 10, inset: 0, own, explained: [false, false], ...more };
    return bareEnds(map, [sewn], (other) => (other === through ? covering : []));
  };
  const angle = fc.double({ min: 0.6, max: Math.PI - 0.6, noNaN: true });

  test('reaches from where its own thread begins to where the line it meets has its last: by the sine of the angle', () => {
    fc.assert(
      fc.property(
        angle,
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        (theta, begins, up) => {
          const bare = begins - up / Math.sin(theta);
          const { findings } = block(theta, begins, up);
          if (bare < 2.9) expect(findings).toEqual([]);
          if (bare < 3.1) return;
          expect(findings).toHaveLength(1);
          const [{ message, level, at, code }] = findings;
          expect(code).toBe('bare-end');
          expect(Math.abs(told(message) - bare)).toBeLessThan(0.1);
          expect(level).toBe(told(message) > 6 ? 'warning' : 'note');
          // in the middle of the stretch, on the seam
          const middle = begins - bare / 2;
          expect(Math.hypot(at![0] - 100, at![1] - 100)).toBeCloseTo(middle, 1);
        },
      ),
    );
  });

  test('at a free end is told from the end itself, at whichever of both it is', () => {
    const map = mapOfLines([
      [
        [20, 100],
        [120, 100],
      ],
    ]);
    const ends = (from: number, to: number) => {
      const own = [sewnLine([20 + from, 100], [20 + to, 100])];
      const sewn: SewnSeam = { seam: 1, reach: 3, repeats: 10, inset: 0, own, explained: [false, false] };
      return bareEnds(map, [sewn], () => []).findings.map(({ message }) => message);
    };
    expect(ends(0, 100)).toEqual([]);
    expect(ends(2.5, 97.5)).toEqual([]);
    expect(ends(8, 96)[0]).toContain('8.0 mm at its start');
    expect(ends(8, 96)[1]).toContain('4.0 mm at its end');
  });

  test('is none where the maker asked for it, or where the stitch stands as openly by itself', () => {
    expect(block(1.2, 9, 1, { explained: [true, true] }).findings).toEqual([]);
    expect(block(1.2, 6, 1, { inset: 5 }).findings).toEqual([]);
    const map = butting(Math.PI / 2);
    const seam = 3 - map.junctions[0].through!;
    // a cross of 2 mm every 10 mm: eight mm lie bare between any two
    const own = [5, 15, 25, 35, 45, 55, 65].map((y) => sewnLine([99, 99 + y], [101, 101 + y]));
    const openly: SewnSeam = { seam, reach: 3, repeats: 7, inset: 0, own, explained: [false, false] };
    expect(bareEnds(map, [openly], () => []).findings).toEqual([]);
    const lost: SewnSeam = { ...openly, own: own.slice(1), repeats: 6 };
    expect(bareEnds(map, [lost], () => []).findings.map(({ message }) => told(message))).toEqual([14]);
  });

  test('leaves nothing of a seam to be told again as bare in its middle', () => {
    const { between } = block(Math.PI / 2, 12, 0);
    const [[from, to]] = [...between.values()];
    expect(from).toBeCloseTo(12, 6);
    expect(to).toBeCloseTo(70, 6);
  });
});

describe('on a plain block', () => {
  const dressed = (stitch: string, theta: number, ends: 'tuck' | 'bevel' | 'short') => {
    const map = butting(theta);
    const block = { name: 'T', map, existing: null, stops: [], origin: [0, 0], findings: [] } as const;
    const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
    return dress(block, defaultDressing(map, { source, dictionary: builtIn, stitch, ends }), builtIn);
  };
  const bare = (...asked: Parameters<typeof dressed>) =>
    dressed(...asked).findings.filter(({ code }) => code === 'bare-end');

  test('no end that tucks, bevels or stops short is told of: stitches that hold together reach it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('feather', 'herringbone', 'blanket', 'cretan', 'chevron', 'fly'),
        fc.double({ min: 0.8, max: 2.3, noNaN: true }),
        fc.constantFrom('tuck' as const, 'bevel' as const, 'short' as const),
        (stitch, theta, ends) => {
          expect(bare(stitch, theta, ends)).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });
});
