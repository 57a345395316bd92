import type { Page } from './page.js';
import type { TextStyle } from './typeface.js';

/** Lines of text below each other, the first with its letters standing at y, `step` mm from one to the next. */
export function textLines(
  page: Page,
  lines: readonly string[],
  x: number,
  y: number,
  step: number,
  style: TextStyle,
): void {
  for (const [i, line] of lines.entries()) page.text(line, x, y + i * step, style);
}
