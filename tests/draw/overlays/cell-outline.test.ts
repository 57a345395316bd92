import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { traceCells } from '../../../src/draw/overlays/cell-outline.js';
import { type FlatField, tiledField } from '../../check/density/tiled-field.js';

const fields = fc
  .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }))
  .chain(([columns, rows]) =>
    fc.array(fc.integer({ min: 0, max: 3 }), { minLength: columns * rows, maxLength: columns * rows }).map(
      (counts): FlatField => ({
        left: -2,
        top: 3,
        cell: 0.25,
        columns,
        rows,
        counts,
        unit: 1,
      }),
    ),
  );

type Ring = (readonly [number, number])[];

function ringsOf(field: FlatField, least: number): Ring[] {
  const rings: Ring[] = [];
  traceCells(tiledField(field, 3), least, {
    move: (x, y) => rings.push([[x, y]]),
    line: (x, y) => rings[rings.length - 1].push([x, y]),
    close: () => {},
  });
  return rings;
}

/** How often lines go round a point (winding number by crossings of a ray to the right). */
function windings(rings: readonly Ring[], [px, py]: readonly [number, number]): number {
  let count = 0;
  for (const ring of rings) {
    ring.forEach(([x0, y0], i) => {
      const [x1, y1] = ring[(i + 1) % ring.length];
      if (y0 <= py === y1 <= py) return;
      if (x0 + ((py - y0) / (y1 - y0)) * (x1 - x0) > px) count += y1 > y0 ? 1 : -1;
    });
  }
  return count;
}

describe('the outline of cells', () => {
  test('goes once round every cell that counts enough, and round no other', () => {
    fc.assert(
      fc.property(fields, fc.integer({ min: 1, max: 3 }), (field, least) => {
        const rings = ringsOf(field, least);
        const wound = field.counts.map((_, i) => {
          const [column, row] = [i % field.columns, Math.floor(i / field.columns)];
          return windings(rings, [field.left + (column + 0.5) * 0.25, field.top + (row + 0.5) * 0.25]);
        });
        expect(wound).toEqual(field.counts.map((count) => (count >= least ? 1 : 0)));
      }),
    );
  });

  test('turns at every point, so that long edges are one line', () => {
    fc.assert(
      fc.property(fields, (field) => {
        const straight = ringsOf(field, 2).flatMap((ring) =>
          ring.filter(([x, y], i) => {
            const [ax, ay] = ring[(i + ring.length - 1) % ring.length];
            const [bx, by] = ring[(i + 1) % ring.length];
            // the point that a ring begins with may lie on an edge
            return i > 0 && ((ax === x && bx === x) || (ay === y && by === y));
          }),
        );
        expect(straight).toEqual([]);
      }),
    );
  });
});
