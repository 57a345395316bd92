import { numberRanges } from '../block/line-list.js';

/** A column of a table: its heading, and whether its cells are figures, which stand to the right. */
export interface Column {
  readonly heading: string;
  readonly figures?: boolean;
}

/** A table in plain text: two spaces between columns, a rule under the headings, nothing behind the last cell. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map((column, c) =>
    rows.reduce((widest, row) => Math.max(widest, row[c].length), column.heading.length),
  );
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, c) => (columns[c].figures ? cell.padStart(widths[c]) : cell.padEnd(widths[c])))
      .join('  ')
      .trimEnd();
  return [
    line(columns.map((column) => column.heading)),
    line(widths.map((width) => '-'.repeat(width))),
    ...rows.map(line),
  ].join('\n');
}

/** Numbers of seams as a person writes them: '1, 4-6, outline'. */
export function numberList(ids: readonly (number | 'outline')[]): string {
  const numbers = ids.filter((id) => id !== 'outline');
  return [
    ...(numbers.length ? [numberRanges(numbers)] : []),
    ...(ids.includes('outline') ? ['outline'] : []),
  ].join(', ');
}

/** '1 stop', '2 stops'. */
export const counted = (count: number, what: string, plural = 's'): string =>
  `${count} ${what}${count === 1 ? '' : plural}`;

/** A number with so many decimals, and no needless ones. */
export const rounded = (value: number, decimals: number): number => {
  const scale = 10 ** decimals;
  return Math.round(value * scale) / scale || 0;
};
