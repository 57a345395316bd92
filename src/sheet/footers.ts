import type { Paper } from './paper.js';

/** From the lower edge of the page, mm: home printers leave about 5 mm blank (common practice). */
const UP = 5.5;

/** Writes at the foot of every page what it belongs to and its number, once all pages are there. */
export function writeFooters({ pages, lines }: Paper, told: string, margin: number): void {
  pages.forEach((page, i) => {
    const { width, height } = page.size;
    const style = { size: 2.6, color: '#444444' };
    const number = `page ${i + 1} of ${pages.length}`;
    const [first] = lines(told, width - 2 * margin - 25, style);
    page.text(first, margin, height - UP, style);
    page.text(number, width - margin, height - UP, { ...style, align: 'right' });
  });
}
