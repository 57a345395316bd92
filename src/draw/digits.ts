import { figureLines } from '../geometry/figures.js';
import { pointAt, pointCount } from '../geometry/polyline.js';
import type { Pen } from './pen.js';

/** Draws a whole number centered on (x, y), its figures `height` mm high. */
export function drawNumber(pen: Pen, value: number, x: number, y: number, height: number): void {
  for (const line of figureLines(value, x, y, height)) {
    pen.move(...pointAt(line, 0));
    for (let i = 1; i < pointCount(line); i++) pen.line(...pointAt(line, i));
  }
}
