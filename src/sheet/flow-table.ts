import { type Flow, MARGIN } from './flow.js';
import type { Box, Page } from './page.js';
import type { Paper } from './paper.js';
import { textLines } from './text-lines.js';
import type { TextStyle } from './typeface.js';

/** A column of a table. Widths are in mm; that of the one without a width is what is left of the page. */
export interface SheetColumn {
  readonly heading: string;
  readonly width?: number;
  /** its cells stand to the right */
  readonly figures?: boolean;
}

/** What stands in a cell: text, smaller text below it, or whatever is drawn into its room. */
export interface SheetCell {
  readonly text?: string;
  readonly below?: string;
  readonly bold?: boolean;
  readonly draw?: (page: Page, room: Box) => void;
}

/** A row of cells, or a remark over the whole width between two rows. */
export type SheetRow = readonly SheetCell[] | { readonly remark: string };

const TEXT = 2.95;
const LINE = 3.7;
const BELOW = { size: 2.55, color: '#444444' } as const;
const BELOW_LINE = 3.2;
const HEADING = { size: 2.55, bold: true } as const;
/** Between cell and rule, and between cells. */
const PAD = 1.1;
const RULE = { color: '#9a9a9a', width: 0.12 };
const HEAVY = { color: '#000000', width: 0.3 };
/** From the top of a line to the line its letters stand on. */
const RISE = 2.75;

/** Sets a table that goes on over the next pages, its headings repeated at the top of each. No row is broken. */
export function flowTable(flow: Flow, columns: readonly SheetColumn[], rows: readonly SheetRow[]): void {
  if (rows.length === 0) return;
  const set = () => setColumns(columns, flow.width);
  const head = (fitting: number) => {
    const { cells, height } = measuredRow(
      set(),
      columns.map(({ heading }) => ({ text: heading })),
      flow.paper,
      HEADING,
    );
    // a heading is of no use without the first row below it
    if (height + fitting > flow.room && flow.y > MARGIN) flow.nextPage();
    const top = flow.take(height);
    for (const draw of cells) draw(flow.page, top, height);
    flow.page.line(MARGIN, flow.y, MARGIN + flow.width, flow.y, HEAVY);
  };
  rows.forEach((row, i) => {
    // measured anew on every page: a first one that lies is wider
    const measured = (one: SheetRow = row) =>
      'remark' in one ? measuredRemark(one.remark, flow) : measuredRow(set(), one, flow.paper);
    // remarks stay with the row that follows them
    let tail = 0;
    for (let k = i; k + 1 < rows.length && 'remark' in rows[k]; k++) tail += measured(rows[k + 1]).height;
    const { height } = measured();
    if (i === 0) head(height + tail);
    else if (height + tail > flow.room) {
      flow.nextPage();
      head(0);
    }
    const here = measured();
    const top = flow.take(here.height);
    for (const draw of here.cells) draw(flow.page, top, here.height);
    flow.page.line(MARGIN, flow.y, MARGIN + flow.width, flow.y, RULE);
  });
}

/** Lines of a cell, at most so many, so that a row fits a page: only a name without end has more. */
const MOST_LINES = 40;

function cellLines(paper: Paper, text: string, width: number, style: TextStyle): string[] {
  if (text === '') return [];
  const lines = paper.lines(text, width, style);
  if (lines.length <= MOST_LINES) return lines;
  const [last] = paper.lines(lines[MOST_LINES - 1], width - paper.width('…', style), style);
  return [...lines.slice(0, MOST_LINES - 1), `${last}…`];
}

interface SetColumn extends SheetColumn {
  readonly x: number;
  readonly wide: number;
}

function setColumns(columns: readonly SheetColumn[], width: number): SetColumn[] {
  const fixed = columns.reduce((sum, column) => sum + (column.width ?? 0), 0);
  let x = MARGIN;
  return columns.map((column) => {
    const wide = column.width ?? width - fixed;
    const set = { ...column, x, wide };
    x += wide;
    return set;
  });
}

interface Measured {
  readonly height: number;
  readonly cells: readonly ((page: Page, top: number, height: number) => void)[];
}

function measuredRow(
  columns: readonly SetColumn[],
  row: readonly SheetCell[],
  paper: Paper,
  heading?: TextStyle,
): Measured {
  let most = 0;
  const cells = columns.map(({ x, wide, figures }, c) => {
    const { text = '', below = '', bold, draw } = row[c];
    const inner = wide - 2 * PAD;
    const style: TextStyle = { ...(heading ?? { size: TEXT, bold }), align: figures ? 'right' : 'left' };
    const lines = cellLines(paper, text, inner, style);
    const smaller = cellLines(paper, below, inner, BELOW);
    most = Math.max(most, lines.length * LINE + smaller.length * BELOW_LINE);
    const at = figures ? x + wide - PAD : x + PAD;
    return (page: Page, top: number, height: number) => {
      draw?.(page, { x: x + PAD, y: top + PAD, width: inner, height: height - 2 * PAD });
      // headings stand on the rule below them, cells hang from the one above
      const start = heading ? top + height - PAD - lines.length * LINE : top + PAD;
      textLines(page, lines, at, start + RISE, LINE, style);
      const under = start + lines.length * LINE + RISE - 0.3;
      textLines(page, smaller, at, under, BELOW_LINE, { ...BELOW, align: style.align });
    };
  });
  return { height: Math.max(most, LINE) + 2 * PAD, cells };
}

/** A remark stands in bold behind two bars, the sign for a halt, on gray. */
function measuredRemark(text: string, { paper, width }: Flow): Measured {
  const style = { size: TEXT, bold: true };
  const lines = paper.lines(text, width - 10, style);
  return {
    height: lines.length * LINE + 2 * PAD,
    cells: [
      (page, top, height) => {
        page.box({ x: MARGIN, y: top, width, height }, { fill: '#e9e9e9' });
        for (const x of [MARGIN + 2.2, MARGIN + 4]) {
          page.box({ x, y: top + PAD + 0.5, width: 0.9, height: 2.5 }, { fill: '#000000' });
        }
        textLines(page, lines, MARGIN + 8, top + PAD + RISE, LINE, style);
      },
    ],
  };
}
