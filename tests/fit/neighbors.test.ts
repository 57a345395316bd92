import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import { waysOf } from '../../src/fit/lines.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { butting, mapOfLines } from './block-of-lines.js';

type XY = readonly [number, number];
const rules = { gap: 0.6, outline: 'free' } as const;
const frame: XY[] = [
  [0, 0],
  [200, 0],
  [200, 100],
  [0, 100],
  [0, 0],
];

/** Two level seams across a block, `apart` mm from each other: the upper one is seam 1. */
const sideBySide = (apart: number, slant = 0) =>
  mapOfLines([
    frame,
    [
      [0, 50],
      [200, 50],
    ],
    [
      [0, 50 + apart],
      [200, 50 + apart + slant],
    ],
  ]);

const lowest = (points: readonly XY[]) => Math.max(...points.map(([, y]) => y));
const highest = (points: readonly XY[]) => Math.min(...points.map(([, y]) => y));

describe('seams that run side by side', () => {
  test('share what lies between them, a gap apart, whatever stitches they get', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 14, noNaN: true }),
        fc.constantFrom('feather', 'herringbone', 'cretan', 'fly', 'blanket'),
        fc.constantFrom('feather', 'chevron', 'cretan', 'fly', 'blanket'),
        (apart, upper, lower) => {
          const asks = [askFor(1, upper, { side: 'right' }), askFor(2, lower)];
          const [one, other] = fitLines(sideBySide(apart), asks, rules).map(({ fit }) =>
            legPoints(chainsOf(fit)),
          );
          expect(one.length).toBeGreaterThan(0);
          expect(other.length).toBeGreaterThan(0);
          expect(highest(other) - lowest(one)).toBeGreaterThanOrEqual(0.6 - 1e-6);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('keep all their width where both find room, and each gets half where neither does', () => {
    const asks = [
      askFor(1, 'feather', { sizes: { width: 8 } }),
      askFor(2, 'feather', { sizes: { width: 8 } }),
    ];
    const wide = waysOf(sideBySide(8.61), asks, 0.6).of;
    expect(wide.map(({ beside }) => beside)).toEqual([null, null]);
    const [upper, lower] = waysOf(sideBySide(6.6), asks, 0.6).of;
    expect(Math.max(...upper.beside!.right)).toBeCloseTo(3, 9);
    expect(Math.max(...lower.beside!.left)).toBeCloseTo(3, 9);
    expect(Math.min(...upper.beside!.left)).toBe(Infinity);
  });

  test('what one does not use the other may', () => {
    // Blanket stitches stand away from the other seam.
    const asks = [askFor(1, 'blanket', { side: 'left' }), askFor(2, 'feather', { sizes: { width: 8 } })];
    expect(waysOf(sideBySide(5.5), asks, 0.6).of.map(({ beside }) => beside)).toEqual([null, null]);
  });

  test('are made smaller where less than half is left, and left bare with the reason where even that is too much', () => {
    const fits = (apart: number) =>
      fitLines(sideBySide(apart), [askFor(1, 'feather'), askFor(2, 'feather')], rules);
    const codes = (apart: number) => fits(apart).flatMap(({ findings }) => findings.map(({ code }) => code));
    expect(codes(12)).toEqual([]);
    expect(new Set(codes(3.5))).toEqual(new Set(['made-smaller']));
    expect(new Set(codes(1))).toEqual(new Set(['made-smaller', 'close-beside', 'plain-line']));
    for (const { fit } of fits(1)) expect(fit.stretches).toEqual([]);
  });

  test('narrow only where they come near: a sliver between nearly parallel seams', () => {
    const [upper] = waysOf(sideBySide(4, 12), [askFor(1, 'feather'), askFor(2, 'feather')], 0.6).of;
    const { u, right } = upper.beside!;
    const wanted = 3;
    const cos = Math.cos(Math.atan(12 / 200));
    for (let i = 0; i < u.length; i++) {
      // the disc that touches the upper line here and the slanting one anywhere
      const disc = ((4 + (12 * u[i]) / 200) * cos) / (1 + cos);
      if (disc - 0.3 < wanted) expect(right[i]).toBeCloseTo(disc - 0.3, 2);
    }
  });

  test('give the same answer in any order and walked either way', () => {
    const map = sideBySide(5, 3);
    const reach = (asks: Parameters<typeof waysOf>[1]) =>
      new Map(waysOf(map, asks, 0.6).of.map(({ ask, beside }) => [ask.seam, beside]));
    const there = reach([askFor(1, 'feather'), askFor(2, 'fly')]);
    expect(reach([askFor(2, 'fly'), askFor(1, 'feather')])).toEqual(there);
    const back = reach([askFor(1, 'feather'), askFor(2, 'fly', { reverse: true, side: 'left' })]);
    const straight = there.get(2)!.left;
    const turned = [...back.get(2)!.right].reverse();
    const missed = turned.map((value, i) => (value === straight[i] ? 0 : Math.abs(value - straight[i])));
    expect(Math.max(...missed)).toBeLessThan(1e-9);
  });
});

describe('seams that meet', () => {
  test('leave the place where they do to their ends', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.4, max: Math.PI / 2, noNaN: true }), (theta) => {
        const map = butting(theta);
        const asks = map.seams.map(({ id }) => askFor(id, 'feather'));
        expect(waysOf(map, asks, 0.6).of.map(({ beside }) => beside)).toEqual([null, null]);
      }),
    );
  });

  test('at a sharp angle: the one that runs through keeps its width, the other keeps clear of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.19, max: 0.33, noNaN: true }), (theta) => {
        const map = butting(theta, 90);
        const through = map.junctions[0].through!;
        const asks = [askFor(through, 'feather'), askFor(3 - through, 'feather')];
        const [over, under] = fitLines(map, asks, rules);
        expect(over.fit.scale).toBe(1);
        expect(over.findings).toEqual([]);
        const upTo = lowest(legPoints(chainsOf(over.fit)));
        // a plain line in the point of the angle is sewn first and lies under the other: it is no part of the feather
        const feather = chainsOf(under.fit).filter(({ kind }) => kind.some((one) => one !== 'straight'));
        expect(highest(legPoints(feather)) - upTo).toBeGreaterThanOrEqual(0.6 - 0.05);
      }),
      { numRuns: 20 },
    );
  });

  test('do not narrow what lies beyond a third seam', () => {
    // two seams end on a level one from both sides, 3 mm apart
    const map = mapOfLines([
      frame,
      [
        [0, 50],
        [200, 50],
      ],
      [
        [100, 0],
        [100, 50],
      ],
      [
        [103, 50],
        [103, 100],
      ],
    ]);
    const asks = map.seams.map(({ id }) => askFor(id, 'feather'));
    expect(waysOf(map, asks, 0.6).of.map(({ beside }) => beside)).toEqual([null, null, null]);
  });
});
