import { float64s } from './flat.js';
import type { Point } from './point.js';

/** A polyline as flat coordinates x0 y0 x1 y1 ..., millimeters. A closed one repeats its first point at the end. */
export type Points = Float64Array;

export const pointCount = (line: Points): number => line.length >> 1;
export const pointAt = (line: Points, i: number): Point => [line[2 * i], line[2 * i + 1]];
export const firstPoint = (line: Points): Point => pointAt(line, 0);
export const lastPoint = (line: Points): Point => pointAt(line, pointCount(line) - 1);

export function fromPoints(points: readonly Point[]): Points {
  const line = float64s(2 * points.length);
  points.forEach(([x, y], i) => {
    line[2 * i] = x;
    line[2 * i + 1] = y;
  });
  return line;
}

export function toPoints(line: Points): Point[] {
  return Array.from({ length: pointCount(line) }, (_, i) => pointAt(line, i));
}

/** Arc length from the start to each point; the last entry is the whole length. */
export function cumulativeLength(line: Points): Float64Array {
  const n = pointCount(line);
  const at = float64s(n);
  for (let i = 1; i < n; i++) {
    const dx = line[2 * i] - line[2 * i - 2];
    const dy = line[2 * i + 1] - line[2 * i - 1];
    // Math.hypot is many times slower and guards against overflow, which no block comes near
    at[i] = at[i - 1] + Math.sqrt(dx * dx + dy * dy);
  }
  return at;
}

export function polylineLength(line: Points): number {
  const at = cumulativeLength(line);
  return at.length ? at[at.length - 1] : 0;
}

export function reversed(line: Points): Points {
  const n = pointCount(line);
  const back = float64s(line.length);
  for (let i = 0; i < n; i++) {
    back[2 * i] = line[2 * (n - 1 - i)];
    back[2 * i + 1] = line[2 * (n - 1 - i) + 1];
  }
  return back;
}
