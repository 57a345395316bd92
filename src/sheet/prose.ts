import { type Flow, MARGIN } from './flow.js';
import { textLines } from './text-lines.js';
import type { TextStyle } from './typeface.js';

const BODY: TextStyle = { size: 2.95 };
const LINE = 3.9;

/** A heading that stays with at least `following` mm of what comes below it. */
export function heading(flow: Flow, text: string, following = 20): void {
  if (flow.room < 10 + following && flow.y > MARGIN) flow.nextPage();
  const above = flow.y > MARGIN ? 3.5 : 0;
  const top = flow.take(above + 6.5);
  flow.page.text(text, MARGIN, top + above + 3.7, { size: 3.9, bold: true });
}

/** Text over the width of the page, its lines kept together. */
export function paragraph(flow: Flow, text: string, style: TextStyle = BODY): void {
  set(flow, text, style, 0);
}

/** The same behind a dot. */
export function item(flow: Flow, text: string, style: TextStyle = BODY): void {
  const { page, top } = set(flow, text, style, 4);
  page.disc(MARGIN + 1.4, top + 1.9, 0.5, '#000000');
}

function set(flow: Flow, text: string, style: TextStyle, indent: number) {
  const lines = flow.paper.lines(text, flow.width - indent, style);
  const top = flow.take(lines.length * LINE + 0.8);
  textLines(flow.page, lines, MARGIN + indent, top + 2.85, LINE, style);
  return { page: flow.page, top };
}
