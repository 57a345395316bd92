import { beforeAll, describe, expect, it } from 'vitest';
import { PAPERS } from '../../../src/sheet/page-sizes.js';
import { mirrored } from '../../../src/sheet/pattern/mirrored.js';
import type { Pattern } from '../../../src/sheet/pattern/pattern.js';
import { patternOf } from '../../../src/sheet/pattern/pattern-of.js';
import { patternPdf } from '../../../src/sheet/pattern/pattern-pdf.js';
import { patternSvg } from '../../../src/sheet/pattern/pattern-svg.js';
import { EDGES, tilingOf } from '../../../src/sheet/pattern/tiles.js';
import { builtIn } from '../../stitches/dictionary.js';
import { darkStretches, type GrayPage, grayPage, hasPoppler, pageTexts } from '../poppler.js';
import { richPanel } from './patterns.js';

const DPI = 300;
/** A sheet so small that the panel takes several. */
const SMALL = { width: 160, height: 210 };
let pattern: Pattern;
beforeAll(async () => {
  pattern = patternOf(await richPanel(), builtIn);
}, 60_000);

const isDark = ({ width, values }: GrayPage, xMm: number, yMm: number): boolean =>
  values[Math.floor((yMm * DPI) / 25.4) * width + Math.floor((xMm * DPI) / 25.4)] < 128;

describe.skipIf(!hasPoppler)('a pattern as PDF, as poppler shows it', () => {
  it('has check bars of 100 mm and an inch on the first page and on all that are drawn on, 300 dots to the inch', async () => {
    const { bytes, pages } = await patternPdf(pattern, SMALL);
    const { tiles } = tilingOf(pattern.frame, SMALL);
    for (const page of [1, ...tiles.map((_, k) => pages - k)]) {
      const gray = grayPage(bytes, page, DPI);
      const rows = Array.from({ length: gray.height }, (_, row) => darkStretches(gray, row));
      const long = rows.filter(
        (row) =>
          row.some((dots) => Math.abs(dots - (100 / 25.4) * DPI) < 2) &&
          row.some((dots) => Math.abs(dots - DPI) < 1.5),
      );
      expect([page, long.length > 0]).toEqual([page, true]);
    }
  });

  it.each([false, true])(
    'has every needle point in its place at actual size, mirrored: %s',
    async (turned) => {
      const shown = turned ? mirrored(pattern) : pattern;
      const tiling = tilingOf(shown.frame, SMALL);
      const { bytes, pages } = await patternPdf(shown, SMALL);
      const missing: string[] = [];
      const seen = new Set<number>();
      tiling.tiles.forEach(({ name, window }, k) => {
        const gray = grayPage(bytes, pages - tiling.tiles.length + 1 + k, DPI);
        for (let i = 0; i < shown.dots.length; i += 2) {
          const [x, y] = [shown.dots[i] - window.left, shown.dots[i + 1] - window.top];
          if (x < 0 || y < 0 || x > window.right - window.left || y > window.bottom - window.top) continue;
          seen.add(i);
          if (!isDark(gray, EDGES.left + x, EDGES.top + y)) missing.push(`${name} ${i}`);
        }
      });
      expect(pages).toBeGreaterThan(tiling.tiles.length);
      expect([seen.size, missing]).toEqual([shown.dots.length / 2, []]);
    },
  );

  it('has crosses at the corners of every page, and names the neighbor along each edge', async () => {
    const { bytes, pages } = await patternPdf(pattern, SMALL);
    const { tiles } = tilingOf(pattern.frame, SMALL);
    const told = pageTexts(bytes);
    for (const [k, { name, core, window, row, column }] of tiles.entries()) {
      const page = pages - tiles.length + k;
      expect(told[page]).toMatch(new RegExp(`${name}\\s`));
      const gray = grayPage(bytes, page + 1, DPI);
      const corners = [core.left, core.right].flatMap((x) => [core.top, core.bottom].map((y) => [x, y]));
      const arms = corners.flatMap(([x, y]) => [
        [x - 3, y],
        [x + 3, y],
        [x, y - 3],
        [x, y + 3],
      ]);
      const light = arms.filter(
        ([x, y]) => !isDark(gray, EDGES.left + x - window.left, EDGES.top + y - window.top),
      );
      expect([name, light]).toEqual([name, []]);
      const neighbors = tiles.filter(
        (other) => Math.abs(other.row - row) + Math.abs(other.column - column) === 1,
      );
      const named = [...told[page].matchAll(/glue: (\w+)/g)].map(([, one]) => one);
      expect(new Set(named)).toEqual(new Set(neighbors.map((one) => one.name)));
    }
  });

  it('tells how to use it, what to mind with a hot iron, and what there is to work', async () => {
    const upright = pageTexts((await patternPdf(pattern, PAPERS.a4)).bytes)[0];
    expect(upright).toContain('not mirrored');
    expect(upright).toContain('iron');
    expect(upright).toContain('Seed bead on feather');
    const turned = pageTexts((await patternPdf(mirrored(pattern), PAPERS.letter)).bytes);
    expect(turned[0]).toContain('is mirrored');
    expect(turned.at(-1)).toContain('Feather');
  });

  it('is the same, byte for byte, every time', async () => {
    const [a, b] = [await patternPdf(pattern, SMALL), await patternPdf(pattern, SMALL)];
    expect(Buffer.from(a.bytes).equals(Buffer.from(b.bytes))).toBe(true);
  });
});

describe('a pattern as SVG', () => {
  it('is one sheet at actual size, a dot for each needle point and bars of 100 mm and an inch', () => {
    const svg = patternSvg(pattern);
    const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg)!;
    const [, , w, h] = box.split(' ').map(Number);
    expect([Number(width), Number(height)]).toEqual([w, h]);
    const { left, right, top, bottom } = pattern.frame;
    expect(w).toBeGreaterThanOrEqual(right - left - 0.01);
    expect(h).toBeGreaterThan(bottom - top);
    const points = /<g class="point"[\s\S]*?<\/g>/.exec(svg)![0];
    expect(points.match(/<circle/g)).toHaveLength(pattern.dots.length / 2);
    const bars = /<g class="check-bars">[\s\S]*?<\/g>/.exec(svg)![0];
    expect([...bars.matchAll(/<rect[^>]* width="([\d.]+)"/g)].map(([, bar]) => Number(bar))).toEqual([
      100, 25.4,
    ]);
  });

  it('is black on white, in lines of 0.2 to 0.3 mm', () => {
    const svg = patternSvg(pattern);
    expect(new Set([...svg.matchAll(/(?:stroke|fill)="(#\w+)"/g)].map(([, color]) => color))).toEqual(
      new Set(['#fff', '#000']),
    );
    const widths = [...svg.matchAll(/stroke-width="([\d.]+)"/g)].map(([, width]) => Number(width));
    expect(widths.filter((width) => width < 0.2 || width > 0.3)).toEqual([]);
  });
});
