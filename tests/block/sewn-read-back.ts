import { sewnLines } from '../../src/block/sewn-lines.js';
import { readDst } from '../../src/formats/dst-read.js';
import type { Point } from '../../src/geometry/point.js';
import { toPoints } from '../../src/geometry/polyline.js';
import { type SewnStop, sewnFile } from '../fixtures/pieced-sewing.js';

/** Lines read from sewn stops, back in the frame they were sewn in. */
export function readBack(stops: readonly SewnStop[], named = stops.map((_, i) => i + 1)): Point[][] {
  const start: Point = [60, 70];
  const drawing = sewnLines(readDst(sewnFile(stops, start, 'TEST'), 'test.dst'), named, 'test.dst');
  const [dx, dy] = [drawing.origin[0] + start[0], drawing.origin[1] + start[1]];
  return drawing.lines.map(({ points }) => toPoints(points).map(([x, y]): Point => [x + dx, y + dy]));
}
