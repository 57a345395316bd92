import type { AccentCount, LeftOut, RowCount } from './fit.js';
import type { Laid } from './lay-rows.js';

/** What all laid parts of a line hold of each row: none of any where nothing is laid. */
export function rowCounts(laid: readonly Laid[]): RowCount[] {
  return (laid[0]?.rows ?? []).map((_, row) => ({
    repeats: sum(laid, ({ rows }) => rows[row].repeats),
    along: sum(laid, ({ rows }) => rows[row].along),
  }));
}

/** The same of each accent: none asked for where there is no row to sit on. */
export function accentCounts(laid: readonly Laid[]): AccentCount[] {
  return (laid[0]?.accents ?? []).map((_, accent) => ({
    asked: sum(laid, ({ accents }) => accents[accent].asked),
    leftOut: laid.flatMap(({ accents }): readonly LeftOut[] => accents[accent].leftOut),
  }));
}

const sum = (laid: readonly Laid[], what: (one: Laid) => number): number =>
  laid.reduce((all, one) => all + what(one), 0);
