import { type BuiltMap, buildSeamMap, type SeamMapOptions } from '../../src/block/build-seam-map.js';
import type { DrawnLine, LineDrawing } from '../../src/block/drawn-line.js';
import type { Seam, SeamMap } from '../../src/block/seam-map.js';
import type { Point } from '../../src/geometry/point.js';
import {
  firstPoint,
  fromPoints,
  lastPoint,
  type Points,
  polylineLength,
} from '../../src/geometry/polyline.js';

/** Lines drawn by hand for a test; a line that comes back to its first point is closed. */
export function drawing(lines: readonly (readonly Point[] | DrawnLine)[], size = 100): LineDrawing {
  return {
    width: size,
    height: size,
    origin: [0, 0],
    lines: lines.map((line, i) =>
      'points' in line ? line : drawn(line as readonly Point[], null, `line ${i + 1}`),
    ),
  };
}

export function drawn(points: readonly Point[], fill: string | null = null, where = 'a line'): DrawnLine {
  const [first, last] = [points[0], points[points.length - 1]];
  return { points: fromPoints(points), closed: first[0] === last[0] && first[1] === last[1], fill, where };
}

export const build = (lines: readonly (readonly Point[] | DrawnLine)[], options?: SeamMapOptions): BuiltMap =>
  buildSeamMap(drawing(lines), options);
export const mapOf = (lines: readonly (readonly Point[] | DrawnLine)[], options?: SeamMapOptions): SeamMap =>
  build(lines, options).map;

export const box = (x: number, y: number, width: number, height: number): Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
  [x, y],
];

export function circle(cx: number, cy: number, r: number, chords = 720): Point[] {
  const points = Array.from({ length: chords }, (_, i): Point => {
    const a = (2 * Math.PI * i) / chords;
    return [cx + r * Math.cos(a), cy + r * Math.sin(a)];
  });
  return [...points, points[0]];
}

/** A seam in few words: its ends, rounded, for lists that can be read. */
export const ends = ({ points }: Seam): string =>
  [firstPoint(points), lastPoint(points)].map(([x, y]) => `${round(x)},${round(y)}`).join(' to ');
export const round = (value: number): number => Math.round(value * 100) / 100 + 0;

export const linesOf = ({ seams, outline }: SeamMap): Points[] => [
  ...seams.map(({ points }) => points),
  ...(outline ? [outline.points] : []),
];
export const wholeLength = (map: SeamMap): number =>
  linesOf(map).reduce((sum, points) => sum + polylineLength(points), 0);
