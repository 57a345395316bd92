import type { Dressed } from '../dress.js';
import type { Box } from '../geometry/box.js';
import type { DressReport } from '../report/dress-report.js';
import { totalsText } from '../report/dress-text.js';
import { counted } from '../report/table.js';
import { CHECK_BARS, checkBars } from './check-bars.js';
import { type Flow, MARGIN } from './flow.js';
import { drawInHoop, type PictureLook } from './hoop-picture.js';
import { shownBox } from './hoop-plan.js';
import type { Page } from './page.js';
import type { Paper } from './paper.js';
import { ABOVE, type PictureLayout, scaleText, sizeOf, TIGHT } from './picture-layout.js';
import { heading, paragraph } from './prose.js';
import { type SetupLine, setupLines } from './setup-lines.js';
import { textLines } from './text-lines.js';

/** The least width of a column of lines to fill in beside the picture, mm. */
const COLUMN = 44;
const GAP = 6;

/** The first page: what it is, the picture in the hoop with the check bars, and lines to fill in. */
export function picturePage(
  flow: Flow,
  dressed: Dressed,
  report: DressReport,
  layout: PictureLayout,
  look: PictureLook,
): void {
  const { page, paper } = flow;
  const { plan, scale, tight } = layout;
  const box = shownBox(plan);
  const { width, height } = sizeOf(box);
  const wide = width * scale;
  const setup = setupLines(report);
  const beside = !tight && flow.width - wide - GAP >= COLUMN;
  const x = tight ? (page.size.width - wide) / 2 : beside ? MARGIN : MARGIN + (flow.width - wide) / 2;
  const y = tight ? TIGHT.above : MARGIN + ABOVE;
  if (tight) page.text(`${dressed.block.name}: sew sheet`, TIGHT.margin + 1, 9, { size: 3.6, bold: true });
  else title(page, paper, flow.width, dressed.block.name, report);
  const unnumbered = drawInHoop(page, dressed, plan, { x, y, scale }, look);
  const under = y + height * scale;
  const small = { size: 2.6, color: '#333333' };
  const told = paper.lines(caption(layout, report, unnumbered), captionWidth(page, flow, tight), small);
  textLines(page, told, tight ? TIGHT.margin + 1 : MARGIN, under + 6.6 - 1.6 * told.length, 3, small);
  checkBars(page, tight ? TIGHT.margin + 1 : MARGIN, under + 7.5);
  flow.y = under + 7.5 + CHECK_BARS.height + 2;
  if (tight) paragraph(flow, sums(report));
  if (beside) {
    const column = { x: x + wide + GAP, width: flow.width - wide - GAP };
    page.text('To fill in', column.x, y + 3, { size: 3.4, bold: true });
    for (const [i, line] of setup.entries())
      fillIn(page, paper, line, column.x, y + 14 + i * 24, column.width);
  } else {
    heading(flow, 'To fill in', 26);
    const half = (flow.width - GAP) / 2;
    const top = flow.take(28);
    for (const [i, line] of setup.entries()) {
      const [column, row] = [i % 2, Math.floor(i / 2)];
      fillIn(flow.page, paper, line, MARGIN + column * (half + GAP), top + 5 + row * 14, half);
    }
  }
}

/** Name and sums above the picture. */
function title(page: Page, paper: Paper, width: number, name: string, report: DressReport): void {
  const [first] = paper.lines(name, width - 30, { size: 6.5, bold: true });
  page.text(first, MARGIN, MARGIN + 5.4, { size: 6.5, bold: true });
  page.text('Sew sheet', MARGIN + width, MARGIN + 5.4, { size: 4, align: 'right', color: '#333333' });
  page.line(MARGIN, MARGIN + 8.4, MARGIN + width, MARGIN + 8.4, { color: '#000000', width: 0.3 });
  const told = { size: 3 };
  textLines(page, paper.lines(sums(report), width, told), MARGIN, MARGIN + 12.8, 4.1, told);
}

/** The sums, with measures that are not broken over two lines. */
const sums = (report: DressReport): string => totalsText(report).replace(/ (x|mm)\b ?/g, unbroken);

const unbroken = (measure: string): string =>
  measure.endsWith('mm') ? measure.replace(' ', '\u00a0') : measure.replaceAll(' ', '\u00a0');

const captionWidth = (page: Page, flow: Flow, tight: boolean): number =>
  tight ? page.size.width - 2 * TIGHT.margin - 2 : flow.width;

/** How large the picture is, and what its signs are. */
function caption({ scale, plan }: PictureLayout, { hoop }: DressReport, unnumbered: number): string {
  const size = scaleText(scale);
  const field = hoop?.fits ? `Sewing field ${hoop.name}${hoop.turned ? ', lying' : ''}` : '';
  const rest = unnumbered > 0 ? `; ${counted(unnumbered, 'stop')} not numbered for want of room` : '';
  if (!plan.field)
    return `Drawn ${size}; the ring is where the needle starts${field ? `. ${field}, not drawn here` : ''}${rest}.`;
  const over = reachesOver(plan.work, plan.field) ? '; where the block reaches over it nothing is sewn' : '';
  return `${field}, ${size}; the cross is the middle of the design, the ring where the needle starts${over}${rest}.`;
}

/** A field lies about the middle of what is sewn, and a block may lie aside of that. */
const reachesOver = (work: Box, field: Box): boolean =>
  work.left < field.left || work.top < field.top || work.right > field.right || work.bottom > field.bottom;

/** A label, a line to write on, and what is usual below it. */
function fillIn(
  page: Page,
  paper: Paper,
  { label, usual }: SetupLine,
  x: number,
  y: number,
  width: number,
): void {
  const name = { size: 3, bold: true };
  page.text(label, x, y, name);
  page.line(x + paper.width(label, name) + 1.5, y + 0.6, x + width, y + 0.6, {
    color: '#000000',
    width: 0.2,
  });
  const small = { size: 2.5, color: '#444444' };
  textLines(page, paper.lines(`usual: ${usual}`, width, small), x, y + 4.2, 3.1, small);
}
