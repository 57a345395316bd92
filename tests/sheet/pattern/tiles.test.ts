import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Box, boxOf } from '../../../src/geometry/box.js';
import { clipLine } from '../../../src/geometry/clip-line.js';
import { polylineLength } from '../../../src/geometry/polyline.js';
import { PAPERS } from '../../../src/sheet/page-sizes.js';
import { labelBox } from '../../../src/sheet/pattern/label-room.js';
import { KINDS } from '../../../src/sheet/pattern/looks.js';
import type { LineKind, Pattern, PatternLine } from '../../../src/sheet/pattern/pattern.js';
import { patternOf } from '../../../src/sheet/pattern/pattern-of.js';
import { tileParts } from '../../../src/sheet/pattern/tile-parts.js';
import { EDGES, OVERLAP, tilingOf } from '../../../src/sheet/pattern/tiles.js';
import { builtIn } from '../../stitches/dictionary.js';
import { richPanel } from './patterns.js';

const side = fc.integer({ min: 100, max: 20_000 }).map((tenths) => tenths / 10);
const frames = fc
  .tuple(fc.integer({ min: -100, max: 100 }), fc.integer({ min: -100, max: 100 }), side, side)
  .map(([left, top, width, height]) => ({ left, top, right: left + width, bottom: top + height }));
const papers = fc.constantFrom(PAPERS.a4, PAPERS.letter);
const isIn = (inner: Box, outer: Box, slack = 1e-9) =>
  inner.left >= outer.left - slack &&
  inner.right <= outer.right + slack &&
  inner.top >= outer.top - slack &&
  inner.bottom <= outer.bottom + slack;

describe('pages of a pattern', () => {
  it('show between them all of it, and every mark smaller than the overlap whole on one page', () => {
    const mark = fc.record({
      x: fc.double({ min: 0, max: 1, noNaN: true }),
      y: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(frames, papers, mark, (frame, paper, { x, y }) => {
        const { tiles } = tilingOf(frame, paper);
        const at = [
          frame.left + x * Math.max(0, frame.right - frame.left - OVERLAP),
          frame.top + y * Math.max(0, frame.bottom - frame.top - OVERLAP),
        ];
        const box: Box = {
          left: at[0],
          top: at[1],
          right: Math.min(frame.right, at[0] + OVERLAP),
          bottom: Math.min(frame.bottom, at[1] + OVERLAP),
        };
        return tiles.some(({ window }) => isIn(box, window));
      }),
    );
  });

  it('have the very same crosses where they meet, and overlap by as much as they say', () => {
    fc.assert(
      fc.property(frames, papers, (frame, paper) => {
        const { tiles, columns } = tilingOf(frame, paper);
        return tiles.every(({ core, window, row, column }) => {
          const right = tiles[row * columns + column + 1];
          const below = tiles[(row + 1) * columns + column];
          const besides =
            column + 1 === columns ||
            (right.core.left === core.right &&
              right.core.top === core.top &&
              right.core.bottom === core.bottom &&
              Math.abs(window.right - right.window.left - OVERLAP) < 1e-9);
          const under =
            !below ||
            (below.core.top === core.bottom &&
              below.core.left === core.left &&
              Math.abs(window.bottom - below.window.top - OVERLAP) < 1e-9);
          return besides && under;
        });
      }),
    );
  });

  it('are as many as the paper needs, upright or lying, each with a name of its own', () => {
    fc.assert(
      fc.property(frames, papers, (frame, paper) => {
        const { tiles, page, rows, columns } = tilingOf(frame, paper);
        const [wide, high] = [page.width - EDGES.left - EDGES.right, page.height - EDGES.top - EDGES.bottom];
        const { left, right, top, bottom } = boxOf(
          tiles.map(({ window }) => Float64Array.of(window.left, window.top, window.right, window.bottom)),
        );
        const fits = tiles.every(
          ({ window }) =>
            window.right - window.left < wide + 1e-9 && window.bottom - window.top < high + 1e-9,
        );
        const spare = (length: number, shown: number, own: number, count: number) =>
          count === 1 || shown - own < length + OVERLAP + 1e-6;
        return (
          fits &&
          isIn(frame, { left, right, top, bottom }) &&
          new Set(tiles.map(({ name }) => name)).size === rows * columns &&
          spare(frame.right - frame.left, right - left, wide - OVERLAP, columns) &&
          spare(frame.bottom - frame.top, bottom - top, high - OVERLAP, rows)
        );
      }),
    );
    expect(
      tilingOf({ left: 0, top: 0, right: 190, bottom: 250 }, PAPERS.a4).tiles.map(({ name }) => name),
    ).toEqual(['A1']);
    const wide = tilingOf({ left: 0, top: 0, right: 260, bottom: 160 }, PAPERS.a4);
    expect([wide.page.width, wide.tiles.length]).toEqual([297, 1]);
    expect(
      tilingOf({ left: 0, top: 0, right: 300, bottom: 400 }, PAPERS.a4).tiles.map(({ name }) => name),
    ).toEqual([...['A1', 'A2', 'B1', 'B2']]);
  });

  it('are refused by the hundred', () => {
    expect(() => tilingOf({ left: 0, top: 0, right: 9000, bottom: 9000 }, PAPERS.a4)).toThrow(
      /pattern: takes \d+ pages; choose some of its seams/,
    );
  });
});

describe('the pages of a block that is larger than one', () => {
  let pattern: Pattern;
  beforeAll(async () => {
    pattern = patternOf(await richPanel(), builtIn);
  }, 60_000);
  /** A small paper, so that seams, ribbon and rings are cut. */
  const paper = { width: 90, height: 110 };

  it('show together every stretch of each kind of line, on each page what lies in its window and no more', () => {
    const tiling = tilingOf(pattern.frame, paper);
    expect(tiling.tiles.length).toBeGreaterThan(8);
    const parts = tileParts(pattern, tiling);
    const inBox = (kind: LineKind, lines: readonly PatternLine[], box: Box) =>
      lines
        .filter((line) => line.kind === kind)
        .flatMap(({ points }) => clipLine(points, box))
        .reduce((sum, line) => sum + polylineLength(line), 0);
    const whole = { left: -1e4, top: -1e4, right: 1e4, bottom: 1e4 };
    for (const kind of KINDS) {
      const all = inBox(kind, pattern.lines, whole);
      const own = parts.reduce((sum, { tile, lines }) => sum + inBox(kind, lines, tile.core), 0);
      expect([kind, all > 50, Math.abs(own - all) < 1e-6]).toEqual([kind, true, true]);
      const shown = parts.map(
        ({ tile, lines }) => inBox(kind, lines, whole) - inBox(kind, pattern.lines, tile.window),
      );
      expect(shown.filter((more) => Math.abs(more) > 1e-6)).toEqual([]);
    }
    const { left, top, right, bottom } = boxOf([pattern.dots]);
    expect(left > pattern.frame.left && right < pattern.frame.right && top > pattern.frame.top).toBe(true);
    expect(bottom).toBeLessThan(pattern.frame.bottom);
    const dots = new Set(parts.flatMap((part) => part.dots.map((at) => at.join())));
    expect(dots.size).toBe(pattern.dots.length / 2);
  });

  it('are left out where nothing is drawn on their own part', () => {
    const corner = { ...pattern, frame: { ...pattern.frame, right: pattern.frame.right + 400 } };
    const tiling = tilingOf(corner.frame, paper);
    const shown = tileParts(corner, tiling).map(({ tile }) => tile.name);
    expect(shown.length).toBeLessThan(tiling.tiles.length / 2);
  });

  it('show each stitch whole on one of them, unless it is longer than they overlap', () => {
    const { tiles } = tilingOf(pattern.frame, paper);
    const cut = pattern.lines
      .filter(({ kind }) => kind === 'stitch' || kind === 'byHand')
      .map(({ points }) => boxOf([points]))
      .filter(({ left, right, top, bottom }) => right - left <= OVERLAP && bottom - top <= OVERLAP)
      .filter((box) => tiles.every(({ window }) => !isIn(box, window)));
    expect(cut).toEqual([]);
  });

  it('write each name once, where no gluing cuts it', () => {
    for (const size of [paper, PAPERS.a4]) {
      const all = tilingOf(pattern.frame, size);
      const written = tileParts(pattern, all).flatMap(({ tile, labels }) =>
        labels.map((label) => ({ label, tile })),
      );
      expect(written.map(({ label }) => label.text).sort()).toEqual(
        pattern.labels.map(({ text }) => text).sort(),
      );
      expect(
        written.filter(({ label, tile }) => !isIn(labelBox(label), tile.core)).map(({ label }) => label.text),
      ).toEqual([]);
    }
  });
});
