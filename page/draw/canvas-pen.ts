import type { Pen } from '../../src/draw/pen.js';

/** What is drawn on: the table itself, or a layer of it. */
export type Drawing = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** A pen that draws into a path of the browser's own, moved to the right by `aside` mm. */
export function canvasPen(path: Path2D, aside = 0): Pen {
  return {
    move: (x, y) => path.moveTo(x + aside, y),
    line: (x, y) => path.lineTo(x + aside, y),
    close: () => path.closePath(),
  };
}
