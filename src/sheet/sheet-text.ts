import type { DressReport } from '../report/dress-report.js';
import { totalsText } from '../report/dress-text.js';
import { lookHere, type Paint } from '../report/look-here.js';
import { counted } from '../report/table.js';
import { PAPER_NAMES } from './page-sizes.js';
import { scaleText } from './picture-layout.js';
import type { SheetTold } from './sew-sheet.js';

/** What is on a sheet, for the terminal. */
export function sheetText(
  report: DressReport,
  { paper, pages, scale, halts }: SheetTold,
  paint?: Paint,
): string {
  // several things may be done at one
  const count = new Set(halts.map(({ before }) => before)).size;
  const handled = count ? `, ${counted(count, 'halt')} to trim, lay or look` : '';
  return [
    `Sew sheet of ${counted(pages, 'page')} ${PAPER_NAMES[paper]}, the picture ${scaleText(scale)}${handled}.`,
    totalsText(report),
    '',
    lookHere(report.findings, paint),
    '',
    `Made ${report.outputs.join(', ')}`,
  ].join('\n');
}
