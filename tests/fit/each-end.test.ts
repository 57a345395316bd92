import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LineAsk } from '../../src/fit/ask.js';
import { clearOfThrough, DEFAULT_GAP } from '../../src/fit/ends.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import type { LineFit } from '../../src/fit/line-fit.js';
import type { MannerAsk } from '../../src/fit/manner.js';
import { MANNERS } from '../../src/formats/dressing.js';
import type { Point } from '../../src/geometry/point.js';
import { box, mapOf } from '../block/draw.js';
import { askFor, chainsOf, legPoints } from './asks.js';

const RULES = { gap: DEFAULT_GAP, outline: 'trim' } as const;
const LEFT = 50;
const RIGHT = 150;
/** Two seams run down, a third goes across from one to the other. */
const lines: Point[][] = [
  box(0, 0, 200, 120),
  [
    [LEFT, 0],
    [LEFT, 120],
  ],
  [
    [RIGHT, 0],
    [RIGHT, 120],
  ],
  [
    [LEFT, 60],
    [RIGHT, 60],
  ],
];
const map = mapOf(lines);
const isAcross = (id: number): boolean => map.seams[id - 1].points[1] === 60;
const across = map.seams.find(({ id }) => isAcross(id))!.id;
const WIDTH = 8;

function fitted(manner: MannerAsk, more: Partial<LineAsk> = {}, stitch = 'feather'): LineFit {
  const asks = map.seams.map(({ id }) =>
    isAcross(id)
      ? askFor(id, stitch, { manner, sizes: { width: WIDTH }, ...more })
      : askFor(id, 'feather', { sizes: { width: WIDTH } }),
  );
  return fitLines(map, asks, RULES).find(({ fit }) => fit.seam === across)!;
}

describe('the two ends of a seam', () => {
  const manner = fc.constantFrom(...MANNERS);

  test('are each made in their own manner: as both are where all of it is asked for', () => {
    fc.assert(
      fc.property(manner, manner, (start, end) => {
        const gaps = fitted([start, end]).fit.endGap;
        expect(gaps[0]).toBeCloseTo(fitted(start).fit.endGap[0], 3);
        expect(gaps[1]).toBeCloseTo(fitted(end).fit.endGap[1], 3);
      }),
      { numRuns: 9 },
    );
  });

  test('are those of the seam itself, whichever way its treatment grows', () => {
    const [there, back] = [false, true].map((reverse) => fitted(['short', 'tuck'], { reverse }).fit.endGap);
    for (const gaps of [there, back]) {
      // half of the through treatment's width faces it, and half of its own is the same whatever the angle: it is a right one
      expect(gaps[0]).toBeGreaterThan(clearOfThrough(WIDTH / 2, DEFAULT_GAP, 0, Math.PI / 2) - 0.01);
      expect(gaps[1]).toBeLessThan(1);
    }
  });

  test('stop short of the one treatment and run in under the other: only that one is sewn later', () => {
    const [left, right] = [1, 2].map(
      (k) =>
        map.seams.filter(({ id }) => id !== across).find(({ points }) => points[0] === [0, LEFT, RIGHT][k])!
          .id,
    );
    expect(fitted(['short', 'tuck']).tucksUnder).toEqual([right]);
    expect(fitted(['tuck', 'short']).tucksUnder).toEqual([left]);
    expect(fitted(['short', 'bevel']).tucksUnder).toEqual([]);
    expect([...fitted('tuck').tucksUnder].sort()).toEqual([left, right].sort());
  });

  test('lose nothing of what they sew where they run in under', () => {
    for (const stitch of ['feather', 'herringbone', 'cretan', 'blanket']) {
      const reach = (manner: MannerAsk) =>
        legPoints(chainsOf(fitted(manner, {}, stitch).fit))
          .filter(([x]) => x > RIGHT - 3)
          .map(([, y]) => y);
      const [mixed, plain] = [reach(['short', 'tuck']), reach('tuck')];
      expect(mixed.length).toBeGreaterThan(0);
      expect(Math.max(...mixed) - Math.min(...mixed)).toBeGreaterThan(
        0.8 * (Math.max(...plain) - Math.min(...plain)),
      );
    }
  });
});
