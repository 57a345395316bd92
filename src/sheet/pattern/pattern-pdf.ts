import { traceLine } from '../../draw/pen.js';
import { checkBars } from '../check-bars.js';
import { writeFooters } from '../footers.js';
import type { LineStyle, Page } from '../page.js';
import type { Size } from '../page-sizes.js';
import { newPaper } from '../paper.js';
import { KINDS, LOOKS } from './looks.js';
import { writeOverview } from './overview.js';
import { DOT_RADIUS, type Pattern } from './pattern.js';
import { type TilePart, tileParts } from './tile-parts.js';
import { EDGES, type Tile, type Tiling, tilingOf } from './tiles.js';

const BLACK = '#000000';
/** Arms of the crosses at the corners of a page's own part, mm: they reach almost to the edge of what it shows. */
const ARM = 4;
const CROSS: LineStyle = { color: BLACK, width: 0.2 };
const GLUE: LineStyle = { color: BLACK, width: 0.15, dash: [0.4, 1.6] };
const SMALL = { size: 2.6 } as const;

/** The pattern at actual size on as many pages as it takes, after one that tells how to use it and what there is to work. */
export async function patternPdf(
  pattern: Pattern,
  paperSize: Size,
): Promise<{ readonly bytes: Uint8Array; readonly pages: number }> {
  const tiling = tilingOf(pattern.frame, paperSize);
  const paper = await newPaper({ title: `${pattern.name}, pattern to work by hand` });
  const parts = tileParts(pattern, tiling);
  const printed = parts.map(({ tile }) => tile);
  writeOverview(paper, paperSize, pattern, tiling, printed);
  for (const part of parts) writeTile(paper.addPage(tiling.page), pattern, tiling, part, printed);
  writeFooters(
    paper,
    `${pattern.name}, pattern to work by hand${pattern.mirrored ? ', mirrored' : ''}`,
    EDGES.left,
  );
  return { bytes: await paper.bytes(), pages: paper.pages.length };
}

function writeTile(
  page: Page,
  pattern: Pattern,
  { tiles, rows, columns }: Tiling,
  { tile, lines, dots, labels }: TilePart,
  printed: readonly Tile[],
): void {
  const several = tiles.length > 1;
  const told = [
    pattern.name,
    ...(several
      ? [`row ${tile.name.replace(/\d+$/, '')} of ${rows}, column ${tile.column + 1} of ${columns}`]
      : []),
    ...(pattern.mirrored ? ['mirrored'] : []),
  ];
  page.text(several ? tile.name : 'Pattern', EDGES.left, 13, { size: 6, bold: true });
  page.text(told.join('; '), EDGES.left + 25, 13, { size: 3.4 });
  const { height } = page.size;
  checkBars(page, EDGES.left, height - EDGES.bottom + 2);
  page.placed({ x: EDGES.left - tile.window.left, y: EDGES.top - tile.window.top }, () => {
    for (const kind of KINDS) {
      const own = lines.filter((line) => line.kind === kind);
      if (own.length === 0) continue;
      const { width, dash } = LOOKS[kind];
      page.stroke({ color: BLACK, width, dash, cap: dash ? 'butt' : 'round' }, (pen) => {
        for (const { points } of own) traceLine(pen, points);
      });
    }
    for (const [x, y] of dots) page.disc(x, y, DOT_RADIUS, BLACK);
    for (const {
      text,
      at: [x, y],
      size,
    } of labels) {
      page.text(text, x, y + 0.36 * size, { size, align: 'center' });
    }
    if (several) writeRegistration(page, tile, printed);
  });
}

/** Crosses at the corners, and along every edge that has a neighbor the line on which both are laid together. */
function writeRegistration(page: Page, { core, row, column }: Tile, printed: readonly Tile[]): void {
  const { left, right, top, bottom } = core;
  for (const x of [left, right]) {
    for (const y of [top, bottom]) {
      page.line(x - ARM, y, x + ARM, y, CROSS);
      page.line(x, y - ARM, x, y + ARM, CROSS);
    }
  }
  const neighbor = (rows: number, columns: number) =>
    printed.find((tile) => tile.row === row + rows && tile.column === column + columns)?.name;
  const [middleX, middleY] = [(left + right) / 2, (top + bottom) / 2];
  const sides = [
    { name: neighbor(0, -1), line: [left, top, left, bottom], at: [left - 1.2, middleY], turn: -90 },
    { name: neighbor(0, 1), line: [right, top, right, bottom], at: [right + 1.2, middleY], turn: 90 },
    { name: neighbor(-1, 0), line: [left, top, right, top], at: [middleX, top - 1.2], turn: 0 },
    { name: neighbor(1, 0), line: [left, bottom, right, bottom], at: [middleX, bottom + 3.2], turn: 0 },
  ] as const;
  for (const { name, line, at, turn } of sides) {
    if (name === undefined) continue;
    page.line(...line, GLUE);
    page.placed({ x: at[0], y: at[1], turn }, () =>
      page.text(`glue: ${name}`, 0, 0, { ...SMALL, align: 'center' }),
    );
  }
}
