import { traceLine } from '../../draw/pen.js';
import { CHECK_BARS, checkBars } from '../check-bars.js';
import { Flow, MARGIN } from '../flow.js';
import { flowTable, type SheetCell } from '../flow-table.js';
import type { Page } from '../page.js';
import type { Size } from '../page-sizes.js';
import type { Paper } from '../paper.js';
import { heading, item } from '../prose.js';
import type { TextStyle } from '../typeface.js';
import { adviceFor } from './advice.js';
import { KEY, KINDS, LOOKS } from './looks.js';
import { DOT_RADIUS, type Entry, type Pattern } from './pattern.js';
import type { Tile, Tiling } from './tiles.js';

const INK = '#000000';
const TITLE: TextStyle = { size: 6, bold: true };
const TEXT: TextStyle = { size: 3 };
/** From the top of a line to the line its letters stand on, and to the next, in sizes. */
const RISE = 0.95;
const LEADING = 1.35;
/** Samples of the key stand in so much room, mm. */
const SAMPLE = 18;
/** The plan of the pages is no larger than this, mm. */
const PLAN = { width: 80, height: 80 };

/** The first page, and more where the list is long: how to use the pattern, its key, how pages lie, what there is to work. */
export function writeOverview(
  paper: Paper,
  size: Size,
  pattern: Pattern,
  tiling: Tiling,
  printed: readonly Tile[],
): void {
  const flow = new Flow(paper, size);
  write(flow, `${pattern.name}: pattern to work by hand${pattern.mirrored ? ', mirrored' : ''}`, TITLE);
  flow.y += 3;
  const bars = flow.take(CHECK_BARS.height + 2);
  checkBars(flow.page, MARGIN, bars);
  for (const text of adviceFor(pattern, tiling)) item(flow, text);
  heading(flow, 'Key');
  for (const kind of KINDS.filter((one) => pattern.lines.some((line) => line.kind === one))) {
    const { width, dash } = LOOKS[kind];
    write(flow, KEY[kind], TEXT, SAMPLE, (page, line) =>
      page.line(MARGIN, line - 1, MARGIN + SAMPLE - 4, line - 1, { color: INK, width, dash }),
    );
  }
  write(flow, 'needle point: here the needle goes through the cloth', TEXT, SAMPLE, (page, line) =>
    page.disc(MARGIN + SAMPLE / 2 - 2, line - 1, DOT_RADIUS, INK),
  );
  if (tiling.tiles.length > 1) {
    heading(flow, 'How the pages lie', planHeight(tiling) + 2);
    drawPlan(flow.page, flow.take(planHeight(tiling) + 2), pattern, tiling, printed);
  }
  heading(flow, 'What there is to work, in this order');
  const columns = [{ heading: 'seam', width: 14 }, { heading: 'stitch' }, { heading: 'thread', width: 84 }];
  flowTable(flow, columns, pattern.entries.map(cells));
}

const cells = ({ place, what, thread }: Entry): SheetCell[] => [
  { text: place, bold: true },
  { text: what },
  { text: thread },
];

/** Text in as many lines as it takes; `mark` draws beside the first of them. */
function write(
  flow: Flow,
  text: string,
  style: TextStyle,
  indent = 0,
  mark: (page: Page, line: number) => void = () => {},
): void {
  flow.paper.lines(text, flow.width - indent, style).forEach((line, i) => {
    const base = flow.take(LEADING * style.size) + RISE * style.size;
    if (i === 0) mark(flow.page, base);
    flow.page.text(line, MARGIN + indent, base, style);
  });
}

const coreOf = ({ tiles }: Tiling): Size => {
  const { left, right, top, bottom } = tiles[0].core;
  return { width: right - left, height: bottom - top };
};

function planScale(tiling: Tiling): number {
  const { width, height } = coreOf(tiling);
  return Math.min(PLAN.width / (tiling.columns * width), PLAN.height / (tiling.rows * height));
}

const planHeight = (tiling: Tiling): number => planScale(tiling) * tiling.rows * coreOf(tiling).height;

/** All pages side by side, made small, with the seams across them; pages that would be blank are left out. */
function drawPlan(page: Page, y: number, pattern: Pattern, tiling: Tiling, printed: readonly Tile[]): void {
  const scale = planScale(tiling);
  const { left, top } = tiling.tiles[0].core;
  page.placed({ x: MARGIN - scale * left, y: y - scale * top, scale }, () => {
    page.stroke({ color: '#777777', width: 0.15 / scale }, (pen) => {
      for (const line of pattern.lines) if (line.kind === 'seam') traceLine(pen, line.points);
    });
    for (const { core, name } of printed) {
      const { left: x, top: at, right, bottom } = core;
      page.box(
        { x, y: at, width: right - x, height: bottom - at },
        { line: { color: INK, width: 0.25 / scale } },
      );
      page.text(name, (x + right) / 2, (at + bottom) / 2 + 1.2 / scale, {
        size: 3.6 / scale,
        bold: true,
        align: 'center',
      });
    }
  });
}
