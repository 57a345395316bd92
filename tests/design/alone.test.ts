import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aloneDesign } from '../../src/design/alone.js';
import type { Design } from '../../src/design/design.js';
import { splitAfter } from '../../src/design/existing.js';
import { toRecords, writeDesign } from '../../src/design/write-design.js';
import { readDst } from '../../src/formats/dst-read.js';
import { littleRecords } from '../formats/little-dst.js';
import { designArbitrary, designOf } from './designs.js';

/** Furthest places over all records and the start, read by a reader of the tests' own. */
function extents(bytes: Uint8Array): number[] {
  let [x, y, left, right, below, above] = [0, 0, 0, 0, 0, 0];
  for (const { dx, dy } of littleRecords(bytes)) {
    x += dx;
    y += dy;
    [left, right] = [Math.min(left, x), Math.max(right, x)];
    [below, above] = [Math.min(below, y), Math.max(above, y)];
  }
  return [left, right, below, above];
}

const headerExtents = (bytes: Uint8Array): number[] => {
  const header = new TextDecoder('latin1').decode(bytes.subarray(0, 512));
  const field = (name: string) =>
    Number(
      header
        .split('\r')
        .find((one) => one.startsWith(name))!
        .slice(3),
    );
  return [-field('-X:') || 0, field('+X:'), -field('-Y:') || 0, field('+Y:')];
};

const holes = (bytes: Uint8Array): string[] => {
  let [x, y] = [0, 0];
  return littleRecords(bytes).flatMap(({ kind, dx, dy }) => {
    x += dx;
    y += dy;
    return kind === 'stitch' ? [`${x} ${y}`] : [];
  });
};

/** New stops sewn between those of an existing file. */
const opened = fc
  .tuple(designArbitrary, designArbitrary)
  .filter(([block]) => designOf(block.runs, block.origin).stops.length > 0)
  .map(([block, added]): Design => {
    const existing = readDst(writeDesign(designOf(block.runs, block.origin)), 'block.dst');
    return { ...designOf(added.runs, added.origin), ...splitAfter(existing, 1, '--after') };
  });

describe('the dressing written alone', () => {
  test('has the extents of the whole, and so its center: both lie alike in the hoop', () => {
    fc.assert(
      fc.property(opened, (design) => {
        const [whole, alone] = [writeDesign(design), writeDesign(aloneDesign(design))];
        expect(extents(alone)).toEqual(extents(whole));
        expect(headerExtents(alone)).toEqual(headerExtents(whole));
        expect(headerExtents(alone)).toEqual(extents(alone));
      }),
    );
  });

  test('has its own holes where the whole has them, and none of those that came with the block', () => {
    fc.assert(
      fc.property(opened, (design) => {
        const alone = holes(writeDesign(aloneDesign(design)));
        expect(alone).toEqual(holes(writeDesign({ ...design, before: null, after: null })));
        const whole = new Set(holes(writeDesign(design)));
        expect(alone.every((hole) => whole.has(hole))).toBe(true);
      }),
    );
  });

  test('begins with moves alone where it reaches less far than the whole', () => {
    const wide = designOf(
      [
        [
          [
            [0, 0],
            [90, 60],
          ],
        ],
      ],
      [0, 0],
    );
    const existing = readDst(writeDesign(wide), 'block.dst');
    const design = {
      ...designOf(
        [
          [
            [
              [10, 10],
              [14, 10],
            ],
          ],
        ],
        [0, 0],
      ),
      ...splitAfter(existing, 1, '--after'),
    };
    const records = littleRecords(writeDesign(aloneDesign(design)));
    const first = records.findIndex(({ kind }) => kind === 'stitch');
    expect(records.slice(0, first).every(({ kind }) => kind === 'jump')).toBe(true);
    expect(first).toBeGreaterThan(8);
    expect(toRecords(aloneDesign(design)).length).toBeGreaterThan(0);
  });
});
