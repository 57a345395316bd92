import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
const straight = mapOfLines([
  [
    [20, 100],
    [110, 100],
  ],
]);

describe('to which hand, and which way it grows', () => {
  test('blanket stands to the hand asked for, whichever way it grows (left of a seam that runs right is up)', () => {
    for (const reverse of [false, true]) {
      const points = (side: 'left' | 'right') =>
        legPoints(chainsOf(fitLines(straight, [askFor(1, 'blanket', { side, reverse })], RULES)[0].fit));
      expect(Math.min(...points('left').map(([, y]) => y))).toBeCloseTo(95, 1);
      expect(Math.max(...points('left').map(([, y]) => y))).toBeLessThan(100.5);
      expect(Math.max(...points('right').map(([, y]) => y))).toBeCloseTo(105, 1);
      expect(Math.min(...points('right').map(([, y]) => y))).toBeGreaterThan(99.5);
    }
  });

  test('a treatment that grows the other way is the same one turned end for end', () => {
    const stitches = fc.constantFrom('feather', 'fly', 'cretan', 'chevron', 'herringbone', 'lazy-daisy');
    fc.assert(
      fc.property(stitches, (stitch) => {
        const points = (reverse: boolean) =>
          legPoints(chainsOf(fitLines(straight, [askFor(1, stitch, { reverse })], RULES)[0].fit));
        // Turned by half a turn about the middle; which hand it starts on does not matter, so v may be mirrored.
        const along = (list: readonly (readonly [number, number])[]) =>
          list.map(([x]) => x).sort((a, b) => a - b);
        const across = (list: readonly (readonly [number, number])[]) =>
          list.map(([, y]) => Math.abs(y - 100)).sort((a, b) => a - b);
        const back = points(true);
        const turned = points(false).map(([x, y]) => [130 - x, y] as const);
        expect(back).toHaveLength(turned.length);
        const apart = (a: readonly number[], b: readonly number[]) =>
          a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i])), 0);
        expect(apart(along(back), along(turned))).toBeLessThan(1e-6);
        expect(apart(across(back), across(turned))).toBeLessThan(1e-6);
      }),
    );
  });

  test('on a seam with junctions the account reads the same way, its ends exchanged only in the walk', () => {
    const map = mapOfLines([
      [
        [20, 100],
        [110, 100],
      ],
      [
        [110, 60],
        [110, 140],
      ],
    ]);
    const butting = map.seams.find((seam) => seam.ends!.some((end) => end.kind === 'junction'))!.id;
    const fitted = (reverse: boolean) =>
      fitLines(
        map,
        [askFor(butting, 'feather', { reverse, manner: 'short' }), askFor(3 - butting, 'feather')],
        RULES,
      )[0].fit;
    const [there, back] = [fitted(false), fitted(true)];
    expect(back.endGap[0]).toBeCloseTo(there.endGap[0], 6);
    expect(back.endGap[1]).toBeCloseTo(there.endGap[1], 6);
    expect(back.stretches.map(({ ends }) => ends)).toEqual(there.stretches.map(({ ends }) => ends));
    expect(back.stretches[0].repeats).toBe(there.stretches[0].repeats);
  });

  test('an edge lies on the block, whatever stitch it is', () => {
    const square = mapOfLines([
      [
        [50, 50],
        [150, 50],
        [150, 150],
        [50, 150],
        [50, 50],
      ],
      [
        [50, 100],
        [150, 100],
      ],
    ]);
    for (const stitch of ['blanket', 'feather', 'herringbone', 'chevron']) {
      const half = askFor('outline', stitch).sized.build(1, askFor('outline', stitch).sized.repeat).reach;
      const offset = stitch === 'blanket' ? -half.right : -Math.max(half.left, half.right);
      const [{ fit }] = fitLines(square, [askFor('outline', stitch, { side: 'right', offset })], RULES);
      expect(fit.stretches.reduce((sum, { repeats }) => sum + repeats, 0) % 1).toBe(0);
      for (const [x, y] of legPoints(chainsOf(fit))) {
        expect(Math.min(x, y)).toBeGreaterThan(50 - 0.3);
        expect(Math.max(x, y)).toBeLessThan(150 + 0.3);
      }
    }
  });

  test('a wide edge turns its corners without passing their bisectors', () => {
    const square = mapOfLines([
      [
        [50, 50],
        [150, 50],
        [150, 150],
        [50, 150],
        [50, 50],
      ],
      [
        [50, 100],
        [150, 100],
      ],
    ]);
    for (const [stitch, width] of [
      ['feather', 12],
      ['cretan', 10],
      ['fly', 10],
    ] as const) {
      const ask = askFor('outline', stitch, { side: 'right', sizes: { width }, offset: -width / 2 });
      const [{ fit }] = fitLines(square, [ask], RULES);
      const chain = chainsOf(fit)[0];
      const perSide = fit.stretches.map(({ repeats }) => repeats * (stitch === 'fly' ? 1 : 2));
      // units of the first side, which runs along the top: none of its nodes lies nearer to the left than to the top
      for (let leg = 0; leg < chain.from.length; leg++) {
        if (chain.unit[leg] === 0 || chain.unit[leg] >= perSide[0] - 1) continue;
        for (const node of [chain.from[leg], chain.to[leg]]) {
          const [x, y] = [chain.nodes[2 * node] - 50, chain.nodes[2 * node + 1] - 50];
          expect(x - y).toBeGreaterThan(-0.2);
          expect(100 - x - y).toBeGreaterThan(-0.2);
        }
      }
    }
  });
});
