import type { Frame } from '../../draw/svg.js';
import type { Box } from '../../geometry/box.js';
import { InputError } from '../../input-error.js';
import { lettered } from '../lettered.js';
import { lying, type Size } from '../page-sizes.js';

/** Neighboring pages show so much of the same drawing, mm: room to glue, and to look whether they meet. */
export const OVERLAP = 10;
/** More pages than these are no pattern any more that a maker glues together. */
const MOST_PAGES = 400;

/** Room on a page beside the drawing, mm: home printers leave about 5 mm blank (common practice); above stands the title, below the check bars. */
export const EDGES = { left: 8, top: 18, right: 8, bottom: 24 } as const;

/** One page of a pattern. Boxes are mm in the pattern's frame. */
export interface Tile {
  /** row by letter, column by number: A1 is the upper left */
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** what is its own: its edges are where pages are cut or folded, and its corners carry the crosses */
  readonly core: Box;
  /** what it shows: half an overlap more on every side */
  readonly window: Box;
}

export interface Tiling {
  readonly page: Size;
  readonly rows: number;
  readonly columns: number;
  /** row by row */
  readonly tiles: readonly Tile[];
}

/**
 * Pages of a paper that hold a frame together, upright or lying, whichever takes fewer; the frame in the middle of them. One
 * page where it fits on one.
 *
 * @throws InputError when that would be hundreds of pages
 */
export function tilingOf(frame: Frame, paper: Size): Tiling {
  const [upright, across] = [paper, lying(paper)].map((page) => countsOn(page, frame));
  const { page, rows, columns } =
    across.rows * across.columns < upright.rows * upright.columns ? across : upright;
  if (rows * columns > MOST_PAGES) {
    throw new InputError(
      'pattern-too-large',
      'pattern',
      `takes ${rows * columns} pages`,
      `choose some of its seams with --seam, or .svg for one large sheet; up to ${MOST_PAGES} pages are made`,
    );
  }
  const [width, height] = coreSize(page, rows * columns);
  const left = (frame.left + frame.right - columns * width) / 2;
  const top = (frame.top + frame.bottom - rows * height) / 2;
  const tiles = Array.from({ length: rows * columns }, (_, i): Tile => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    // each edge is reckoned from the first, so that neighbors have the very same one
    const core: Box = {
      left: left + column * width,
      right: left + (column + 1) * width,
      top: top + row * height,
      bottom: top + (row + 1) * height,
    };
    const half = OVERLAP / 2;
    const window: Box = {
      left: core.left - half,
      right: core.right + half,
      top: core.top - half,
      bottom: core.bottom + half,
    };
    return {
      name: `${lettered(row)}${column + 1}`,
      row,
      column,
      core,
      window: rows * columns === 1 ? core : window,
    };
  });
  return { page, rows, columns, tiles };
}

function countsOn(
  page: Size,
  { left, right, top, bottom }: Frame,
): { page: Size; rows: number; columns: number } {
  const [width, height] = [right - left, bottom - top];
  const [wide, high] = coreSize(page, 1);
  if (width <= wide && height <= high) return { page, rows: 1, columns: 1 };
  const [w, h] = coreSize(page, 2);
  return { page, rows: Math.ceil(height / h), columns: Math.ceil(width / w) };
}

/** What is a page's own when there are so many of them. */
function coreSize({ width, height }: Size, pages: number): [number, number] {
  const shared = pages > 1 ? OVERLAP : 0;
  return [width - EDGES.left - EDGES.right - shared, height - EDGES.top - EDGES.bottom - shared];
}
