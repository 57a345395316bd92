import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { backwards, mirrored } from '../../src/stitches/symmetry.js';
import { dictionary, nodeAt, stitchNamed } from './dictionary.js';
import { layRow } from './lay-row.js';

/** The visible thread of a row as a set of chords, whichever way each was worked. */
function chords(
  legs: readonly { kind: string; xy: readonly (readonly [number, number])[] }[],
  move = (u: number, v: number) => [u, v],
) {
  const tidy = (x: number) => (Math.round(x * 1e6) / 1e6 + 0).toFixed(5);
  const all = new Set<string>();
  for (const leg of legs) {
    if (leg.kind === 'under') continue;
    for (let i = 1; i < leg.xy.length; i++) {
      const ends = [leg.xy[i - 1], leg.xy[i]].map(([u, v]) => move(u, v).map(tidy).join(','));
      all.add(ends.sort().join(' '));
    }
  }
  return all;
}

describe.each(dictionary.map((stitch) => ({ name: stitch.name, stitch })))('$name', ({ stitch }) => {
  const unit = stitch.build({});
  const glide = stitch.symmetry === 'glide';

  test('in the other hand is a true mirror image, and twice mirrored is itself', () => {
    expect(mirrored(mirrored(unit))).toEqual(unit);
    expect(chords(layRow(mirrored(unit), glide, 4))).toEqual(
      chords(layRow(unit, glide, 4), (u, v) => [u, -v]),
    );
    expect(mirrored(unit).reach).toEqual({ left: unit.reach.right, right: unit.reach.left });
  });

  test('growing the other way is the same row seen from its other end', () => {
    const back = backwards(unit);
    expect(backwards(back).joins).toEqual(unit.joins);
    expect(back.overhang).toEqual({ start: unit.overhang.end, end: unit.overhang.start });
    expect(back.legs.map(({ name, from, to }) => [name, from, to])).toEqual(
      unit.legs.map(({ name, from, to }) => [name, from, to]),
    );
    const open = { ...unit, closing: [], ending: [] };
    const count = 4;
    const turned = chords(layRow(open, glide, count), (u, v) => [
      count * unit.length - u,
      glide && count % 2 === 0 ? -v : v,
    ]);
    expect(chords(layRow({ ...backwards(unit), closing: [], ending: [] }, glide, count))).toEqual(turned);
    for (const [here, next] of back.joins) {
      const [u, v] = nodeAt(back, here);
      const [nextU, nextV] = nodeAt(back, next);
      expect([u, Math.abs(v)]).toEqual([
        expect.closeTo(nextU + back.length, 9),
        expect.closeTo(Math.abs(nextV), 9),
      ]);
    }
  });

  if (glide) {
    // Feather and its kin alternate strictly: one half of a repeat is the other with right and left exchanged.
    test('is a true glide: half a repeat on, its mirror image', () => {
      const long = chords(layRow({ ...unit, closing: [], ending: [] }, true, 6));
      const moved = chords(layRow({ ...unit, closing: [], ending: [] }, true, 5), (u, v) => [
        u + unit.length,
        -v,
      ]);
      for (const chord of moved) expect(long.has(chord)).toBe(true);
    });
  }

  if (stitch.symmetry === 'mirror') {
    test('is its own mirror image', () => {
      const { min, max } = stitch.parameters.find(({ name }) => name === 'width')!;
      fc.assert(
        fc.property(fc.double({ min, max, noNaN: true }), (width) => {
          const row = layRow(stitch.build({ width }), false, 3);
          expect(chords(row, (u, v) => [u, -v])).toEqual(chords(row));
        }),
      );
    });
  }
});

test('feather grows from the way its arms point: backwards, its tips lie ahead of their loops', () => {
  const unit = backwards(stitchNamed('feather').build({}));
  const arm = unit.legs.find(({ name }) => name === 'arm')!;
  expect(nodeAt(unit, arm.to)[0]).toBeGreaterThan(nodeAt(unit, arm.from)[0]);
});
