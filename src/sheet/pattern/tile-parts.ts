import { type Box, boxOf } from '../../geometry/box.js';
import { clipLine } from '../../geometry/clip-line.js';
import type { Point } from '../../geometry/point.js';
import { labelBox } from './label-room.js';
import type { Label, Pattern, PatternLine } from './pattern.js';
import { OVERLAP, type Tile, type Tiling } from './tiles.js';

/** What one page shows of a pattern. */
export interface TilePart {
  readonly tile: Tile;
  /** cut to what the page shows */
  readonly lines: readonly PatternLine[];
  readonly dots: readonly Point[];
  /** moved so far that gluing cuts nothing of them */
  readonly labels: readonly Label[];
}

/**
 * The parts of a pattern, page by page, without pages on whose own part nothing is drawn. Lines and dots stand on every page
 * that shows them, names on the one whose own their middle is. Linear in the marks and the pages that each of them meets.
 */
export function tileParts(pattern: Pattern, tiling: Tiling): TilePart[] {
  const parts = tiling.tiles.map((tile) => ({
    tile,
    lines: [] as PatternLine[],
    dots: [] as Point[],
    labels: [] as Label[],
    isBlank: true,
  }));
  for (const { kind, points } of pattern.lines) {
    for (const i of tilesAt(tiling, boxOf([points]))) {
      const { window, core } = tiling.tiles[i];
      const part = parts[i];
      part.lines.push(...clipLine(points, window).map((piece): PatternLine => ({ kind, points: piece })));
      if (part.isBlank && clipLine(points, core).length > 0) part.isBlank = false;
    }
  }
  for (let i = 0; i < pattern.dots.length; i += 2) {
    const [x, y] = [pattern.dots[i], pattern.dots[i + 1]];
    for (const t of tilesAt(tiling, { left: x, right: x, top: y, bottom: y })) {
      if (holds(tiling.tiles[t].window, [x, y])) parts[t].dots.push([x, y]);
    }
  }
  for (const label of pattern.labels) {
    const [x, y] = label.at;
    const own = tilesAt(tiling, { left: x, right: x, top: y, bottom: y }).find((t) =>
      holds(tiling.tiles[t].core, label.at),
    );
    if (own === undefined) continue;
    parts[own].labels.push(movedInto(label, tiling.tiles[own].core));
    parts[own].isBlank = false;
  }
  return parts.flatMap(({ isBlank, ...part }) => (isBlank ? [] : [part]));
}

/** Places among the tiles of those whose window may meet a box. */
function tilesAt({ tiles, rows, columns }: Tiling, box: Box): number[] {
  const { left, right, top, bottom } = tiles[0].core;
  const range = (low: number, high: number, from: number, size: number, count: number): [number, number] => [
    Math.max(0, Math.floor((low - OVERLAP / 2 - from) / size)),
    Math.min(count - 1, Math.floor((high + OVERLAP / 2 - from) / size)),
  ];
  const [firstColumn, lastColumn] = range(box.left, box.right, left, right - left, columns);
  const [firstRow, lastRow] = range(box.top, box.bottom, top, bottom - top, rows);
  const found: number[] = [];
  for (let row = firstRow; row <= lastRow; row++) {
    for (let column = firstColumn; column <= lastColumn; column++) found.push(row * columns + column);
  }
  return found;
}

const holds = ({ left, right, top, bottom }: Box, [x, y]: Point): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

/** Moved until it lies within a box, as far as it is no larger. */
function movedInto(label: Label, { left, right, top, bottom }: Box): Label {
  const box = labelBox(label);
  const into = (low: number, high: number, from: number, to: number) =>
    low < from ? from - low : high > to ? to - high : 0;
  const [x, y] = label.at;
  return {
    ...label,
    at: [x + into(box.left, box.right, left, right), y + into(box.top, box.bottom, top, bottom)],
  };
}
