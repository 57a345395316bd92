import { Delaunay } from 'd3-delaunay';
import type { LineDrawing } from '../../../src/block/drawn-line.js';
import { seeded } from '../../bench/many-seams.js';
import { drawingOf, type XY } from './convex-block.js';

/**
 * A rectangle of 100 to 200 mm whose 5 to 12 patches are the Voronoi cells of random points (d3-delaunay): three sides
 * meet in every point, at any angles. Points are moved once to the middles of their cells (Lloyd), so that patches are of
 * like size. Seeded.
 */
export function voronoiBlock(seed: number): LineDrawing {
  const random = seeded(104729 * seed);
  for (let k = 0; k < 10; k++) random();
  const [width, height] = [100 + 100 * random(), 100 + 100 * random()];
  const scattered = Array.from(
    { length: 5 + Math.floor(8 * random()) },
    (): XY => [width * random(), height * random()],
  );
  const cellsOf = (points: readonly XY[]) => [
    ...Delaunay.from(points.map(([x, y]): [number, number] => [x, y]))
      .voronoi([0, 0, width, height])
      .cellPolygons(),
  ];
  const settled = cellsOf(scattered).map((cell): XY => {
    const corners = cell.slice(1);
    return [
      corners.reduce((sum, [x]) => sum + x, 0) / corners.length,
      corners.reduce((sum, [, y]) => sum + y, 0) / corners.length,
    ];
  });
  const sides = new Map<string, [XY, XY]>();
  for (const cell of cellsOf(settled)) {
    for (let i = 0; i + 1 < cell.length; i++) {
      const [a, b] = [cell[i], cell[i + 1]] as [XY, XY];
      if (onFrame(a, b, width, height)) continue;
      const key = [a, b]
        .map((p) => p.map((v) => v.toFixed(6)).join())
        .sort()
        .join(' ');
      sides.set(key, [a, b]);
    }
  }
  const frame: XY[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
    [0, 0],
  ];
  return drawingOf(width, height, [frame, ...sides.values()]);
}

function onFrame(a: XY, b: XY, width: number, height: number): boolean {
  const isBoth = (k: 0 | 1, value: number) => Math.abs(a[k] - value) < 1e-6 && Math.abs(b[k] - value) < 1e-6;
  return isBoth(0, 0) || isBoth(0, width) || isBoth(1, 0) || isBoth(1, height);
}
