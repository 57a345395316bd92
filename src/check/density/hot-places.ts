import { cellIndex, eachRow, type Field } from './field.js';

/** Cells side by side whose values are above a limit, and the densest of them. */
export interface HotPlace {
  /** middle of the densest cell, mm */
  readonly at: readonly [number, number];
  readonly value: number;
}

/** Where a field is above a limit: one place for all cells that touch, side or corner. Linear in the cells that are kept. */
export function hotPlaces(field: Field, limit: number): HotPlace[] {
  const { left, top, cell, counts, unit } = field;
  const least = limit / unit;
  const seen = new Uint8Array(counts.length);
  const found: HotPlace[] = [];
  eachRow(field, (row, first, from, to) => {
    for (let i = from; i < to; i++) {
      if (counts[i] <= least || seen[i]) continue;
      let peak = { count: 0, column: 0, row: 0 };
      seen[i] = 1;
      for (const todo = [first + i - from, row]; todo.length > 0; ) {
        const [r, c] = [todo.pop()!, todo.pop()!];
        const count = counts[cellIndex(field, c, r)];
        if (count > peak.count) peak = { count, column: c, row: r };
        for (let dr = -1; dr <= 1; dr++) {
          for (let dc = -1; dc <= 1; dc++) {
            const next = cellIndex(field, c + dc, r + dr);
            if (next < 0 || seen[next] || counts[next] <= least) continue;
            seen[next] = 1;
            todo.push(c + dc, r + dr);
          }
        }
      }
      found.push({
        at: [left + (peak.column + 0.5) * cell, top + (peak.row + 0.5) * cell],
        value: peak.count * unit,
      });
    }
  });
  return found;
}
