import type { Field } from './density.js';

/** Cells side by side whose values are above a limit, and the densest of them. */
export interface HotPlace {
  /** middle of the densest cell, mm */
  readonly at: readonly [number, number];
  readonly value: number;
}

/** Where a field is above a limit: one place for all cells that touch, side or corner. Linear in the cells. */
export function hotPlaces(
  { left, top, cell, columns, rows, counts, unit }: Field,
  limit: number,
): HotPlace[] {
  const least = limit / unit;
  const seen = new Uint8Array(counts.length);
  const found: HotPlace[] = [];
  for (let start = 0; start < counts.length; start++) {
    if (counts[start] <= least || seen[start]) continue;
    let peak = start;
    seen[start] = 1;
    for (const todo = [start]; todo.length > 0; ) {
      const at = todo.pop()!;
      if (counts[at] > counts[peak]) peak = at;
      const [row, column] = [Math.floor(at / columns), at % columns];
      for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
        for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) {
          const next = r * columns + c;
          if (seen[next] || counts[next] <= least) continue;
          seen[next] = 1;
          todo.push(next);
        }
      }
    }
    const [row, column] = [Math.floor(peak / columns), peak % columns];
    found.push({ at: [left + (column + 0.5) * cell, top + (row + 0.5) * cell], value: counts[peak] * unit });
  }
  return found;
}
