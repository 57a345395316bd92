import { cellIndex, type Field } from '../../../src/check/density/field.js';

/** A field as a plain list of its cells, row by row. */
export type FlatField = Omit<Field, 'counts' | 'starts' | 'across'> & { readonly counts: readonly number[] };

/** The same kept tile by tile, of so many cells across; tiles in which nothing is counted are left out. */
export function tiledField({ counts, ...flat }: FlatField, across: number): Field {
  const { columns, rows } = flat;
  const [wide, high] = [Math.ceil(columns / across), Math.ceil(rows / across)];
  const starts = new Int32Array(wide * high).fill(-1);
  let kept = 0;
  counts.forEach((count, i) => {
    const tile = Math.floor(Math.floor(i / columns) / across) * wide + Math.floor((i % columns) / across);
    if (count > 0 && starts[tile] < 0) starts[tile] = kept++ * across ** 2;
  });
  const field = { ...flat, across, starts, counts: new Uint16Array(kept * across ** 2) };
  counts.forEach((count, i) => {
    if (count > 0) field.counts[cellIndex(field, i % columns, Math.floor(i / columns))] = count;
  });
  return field;
}
