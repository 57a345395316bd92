import { INCH } from '../geometry/units.js';
import type { LineStyle, Page } from './page.js';

/** mm */
const INK: LineStyle = { color: '#000000', width: 0.25 };
/** Height of the ticks at the ends of a bar, mm. */
const TICK = 3;
const SMALL = { size: 2.6 };

/** What is written beside the bars. */
export const PRINT_AS_IT_IS =
  'Print at 100 %, not fitted to the page; then these bars are as long as they say.';

/** Room that the two bars take with what is written beside them, mm. */
export const CHECK_BARS = { width: 145, height: 9 } as const;

/**
 * A bar of 100 mm and one of 1 inch side by side, their left upper corner at (x, y), and what they are for: whoever prints
 * a page holds a ruler to them. Lengths are measured between the outer edges of the end ticks' black, so that a bar is as
 * long as it is dark.
 */
export function checkBars(page: Page, x: number, y: number): void {
  bar(page, x, y, 100, 10);
  bar(page, x + 116, y, INCH, INCH / 4);
  page.text('100 mm', x, y + TICK + 3.4, SMALL);
  page.text('1 inch', x + 116, y + TICK + 3.4, SMALL);
  page.text(PRINT_AS_IT_IS, x + 12, y + TICK + 3.4, SMALL);
}

/** A bar with a field of black and white for each part, a tick at both ends. */
function bar(page: Page, x: number, y: number, length: number, part: number): void {
  for (let k = 0; k * part < length - 1e-9; k += 2) {
    page.box({ x: x + k * part, y: y + TICK - 1.2, width: part, height: 1.2 }, { fill: '#000000' });
  }
  const inner = INK.width / 2;
  page.line(x + inner, y, x + inner, y + TICK, INK);
  page.line(x + length - inner, y, x + length - inner, y + TICK, INK);
  page.line(x, y + TICK - inner, x + length, y + TICK - inner, INK);
}
