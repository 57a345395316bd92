import type { Points } from '../geometry/polyline.js';

/** What geometry draws to, in millimeters of the block's frame. A picture, a screen and a ruler are all pens. */
export interface Pen {
  move(x: number, y: number): void;
  line(x: number, y: number): void;
  close(): void;
}

/** Draws points `from` to `to` (the last excluded) of a polyline as one open line. */
export function traceLine(pen: Pen, line: Points, from = 0, to = line.length >> 1): void {
  if (to <= from) return;
  pen.move(line[2 * from], line[2 * from + 1]);
  for (let i = from + 1; i < to; i++) pen.line(line[2 * i], line[2 * i + 1]);
}

/** Draws a closed polyline, whose last point repeats its first, as a closed figure. */
export function traceRing(pen: Pen, ring: Points): void {
  traceLine(pen, ring, 0, (ring.length >> 1) - 1);
  pen.close();
}

/** A pen that draws everything moved aside. */
export function shifted(pen: Pen, dx: number, dy: number): Pen {
  return {
    move: (x, y) => pen.move(x + dx, y + dy),
    line: (x, y) => pen.line(x + dx, y + dy),
    close: () => pen.close(),
  };
}
