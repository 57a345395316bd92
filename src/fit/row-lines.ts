import { fromPoints, type Points } from '../geometry/polyline.js';
import { type Laying, layer } from './lay.js';
import type { Placing } from './unit-places.js';

/** A row's line is told by points so far apart, mm: on the tightest wave the line between them strays less than it is wide. */
const STEP = 0.5;

/**
 * The lines that rows are worked on, in the block's frame, where these are not the treatment's own line: drawn along it as
 * waves, or moved beside it. Each once, however many rows share it. Linear in their length.
 */
export function rowLines(placings: readonly Placing[]): Points[] {
  const told = new Map<Laying, Set<number>>();
  return placings.flatMap(({ laying, runs, beside, closed }) => {
    const known = told.get(laying) ?? new Set<number>();
    if (known.has(beside) || runs.length === 0) return [];
    told.set(laying, known.add(beside));
    if (!laying.on && laying.offset === 0 && beside === 0) return [];
    const lay = layer(laying);
    const points: [number, number][] = [];
    runs.forEach(({ from, count, length }, r) => {
      const pieces = Math.max(1, Math.ceil((count * length) / STEP));
      for (let i = r === 0 ? 0 : 1; i <= pieces; i++) {
        lay.at(from + (count * length * i) / pieces, beside);
        points.push([lay.out[0], lay.out[1]]);
      }
    });
    if (closed) points[points.length - 1] = points[0];
    return [fromPoints(points)];
  });
}
