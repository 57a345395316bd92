import { describe, expect, test } from 'vitest';
import type { Block } from '../../src/block/block.js';
import { dress } from '../../src/dress.js';
import type { CornerManner, Dressing } from '../../src/formats/dressing.js';
import { distance, type Point } from '../../src/geometry/point.js';
import { toPoints } from '../../src/geometry/polyline.js';
import { defaultDressing } from '../../src/plan.js';
import { withSettings } from '../../src/settings.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { builtIn } from '../stitches/dictionary.js';

/** One seam that turns by a right angle. */
const corner: Point = [100, 40];
const map = mapOfLines([[[20, 40], corner, [100, 120]]]);
const block: Block = { name: 'block', map, existing: null, stops: [], origin: [0, 0], findings: [] };
const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };

const plain = (stitch: string): Dressing => defaultDressing(map, { source, dictionary: builtIn, stitch });
const told = (stitch: string, value: CornerManner): Dressing =>
  withSettings(plain(stitch), [{ line: 1, what: 'corner', value }], map, builtIn);
const fitOf = (dressing: Dressing) => dress(block, dressing, builtIn).lines[0].fit;
const sewn = (dressing: Dressing): Point[] =>
  dress(block, dressing, builtIn).design.stops.flatMap(({ runs }) => toPoints(runs.xy));

describe('how a row passes a sharp corner', () => {
  test('by itself it does as its stitch does: saying the same changes nothing', () => {
    for (const name of ['blanket', 'feather', 'herringbone', 'running']) {
      const { corner: own } = builtIn.stitches.get(name)!;
      expect(sewn(told(name, own))).toEqual(sewn(plain(name)));
    }
  });

  test('broken, it ends at the corner and starts anew there', () => {
    const ends = fitOf(told('herringbone', 'break')).stretches.map((one) => one.ends);
    expect(ends.length).toBe(2);
    expect(ends[0][1]).toBe('corner');
    expect(ends[1][0]).toBe('corner');
  });

  test('turned, its foot lies in the corner; gone round, it is one stretch that keeps off the corner', () => {
    const nearest = (points: Point[]) => Math.min(...points.map((p) => distance(p, corner)));
    expect(nearest(sewn(told('blanket', 'turn')))).toBeLessThan(0.1);
    // its arms stand outside: it goes round as tightly as a corner is ever rounded, 0.6 mm off it, passes side by side
    expect(nearest(sewn(told('blanket', 'round')))).toBeGreaterThan(0.3);
    expect(fitOf(told('blanket', 'turn')).stretches.length).toBe(2);
    expect(fitOf(told('blanket', 'round')).stretches.length).toBe(1);
  });

  test('told to go round, it does whatever that leaves bare; by itself it would break off', () => {
    const round = plain('detached-wheatear');
    const inside = (corner?: CornerManner): Dressing => ({
      ...round,
      treatments: round.treatments.map((one) => ({ ...one, side: 'right', corner })),
    });
    expect(fitOf(inside()).stretches.length).toBe(2);
    expect(fitOf(inside('round')).stretches.length).toBe(1);
  });

  test('a manner that there is not is refused', () => {
    expect(() => told('fly', 'mitre' as CornerManner)).toThrow('choose turn, round, break');
  });
});
