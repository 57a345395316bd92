import { describe, expect, it } from 'vitest';
import { coveredArea, partsOfRun } from '../../src/block/stop-kinds.js';
import type { Point } from '../../src/geometry/point.js';
import { evenly, outAndBack, tied, zigzag } from '../fixtures/pieced-sewing.js';
import { circle } from './draw.js';

const line: Point[] = [
  [0, 0],
  [60, 10],
];
/** Rounded to machine steps, as every stitch file is. */
const sewn = (run: readonly Point[]): Point[] =>
  run.map(([x, y]): Point => [Math.round(10 * x) / 10, Math.round(10 * y) / 10]);
const kinds = (run: readonly Point[]): string =>
  partsOfRun(sewn(run))
    .map(({ kind }) => kind)
    .join(' ');

/** Rows back and forth, as areas are filled (common practice): 0.4 mm apart, stitches of 3 mm. */
const fill = (width: number, height: number): Point[] =>
  Array.from({ length: Math.round(height / 0.4) }, (_, r): Point[] => {
    const row = evenly(
      [
        [0, 0.4 * r],
        [width, 0.4 * r],
      ],
      3,
    );
    return r % 2 ? row.reverse() : row;
  }).flat();

/** Satin across a leaf: pointed at both ends, so that every stitch has its own width. */
const leaf = (length: number, width: number): Point[] =>
  Array.from({ length: Math.round(length / 0.2) }, (_, i): Point => {
    const u = 0.2 * i;
    return [u, (i % 2 ? -0.5 : 0.5) * width * Math.sin((Math.PI * (u + 0.1)) / length)];
  });

describe('what a stop sews', () => {
  it('is a line where it is plain stitches: once, out and back, tied, with corners, round a curve, tripled', () => {
    const bean = evenly(line, 2.5).flatMap((p, i, all) => (i ? [p, all[i - 1], p] : [p]));
    const zigzagLine: Point[] = [
      [0, 0],
      [10, 20],
      [20, 0],
      [30, 20],
      [40, 0],
      [50, 20],
      [60, 0],
    ];
    for (const run of [
      evenly(line, 2.8),
      outAndBack(line, 2.8, 2.6),
      tied(outAndBack(line, 2.8, 2.6)),
      tied(evenly(zigzagLine, 2.8)),
      evenly(circle(20, 20, 6), 2),
      bean,
    ]) {
      expect(kinds(run)).toBe('line');
      expect(coveredArea([sewn(run)])).toBe(0);
    }
  });

  it('is an edge where it is a zigzag of one width, open or as close as satin, round corners and curves too', () => {
    const corner: Point[] = [
      [0, 0],
      [40, 0],
      [60, 30],
    ];
    for (const on of [line, corner, circle(20, 20, 15)]) {
      for (const [width, pitch] of [
        [3, 0.8],
        [4, 0.2],
        [2.5, 1.5],
      ]) {
        const found = partsOfRun(sewn(zigzag(on, width, pitch)));
        const edges = found.filter(({ kind }) => kind === 'edge');
        const among = edges.reduce((sum, { from, to }) => sum + to - from, 0);
        expect(among / (found[found.length - 1].to - found[0].from)).toBeGreaterThan(0.95);
      }
    }
  });

  it('is told apart within one run: tie, line, zigzag, tie', () => {
    const edge = tied([
      ...evenly(
        [
          [0, 0],
          [30, 0],
        ],
        2.8,
      ),
      ...zigzag(
        [
          [30, 0],
          [60, 0],
        ],
        3,
        0.6,
      ),
    ]);
    expect(kinds(edge)).toBe('line edge line');
  });

  it('is a figure where satin of changing width is small, and a fill where it is large or wide', () => {
    expect(kinds(leaf(6, 2))).toBe('figure');
    expect(kinds(leaf(30, 9))).toBe('fill');
    expect(kinds(zigzag(line, 14, 0.3))).toBe('fill');
  });

  it('covers an area where rows of stitches lie side by side, straight or in a spiral', () => {
    expect(coveredArea([sewn(fill(20, 15))])).toBeGreaterThan(250);
    expect(coveredArea([sewn(fill(20, 15))])).toBeLessThan(300);
    const spiral = Array.from({ length: 800 }, (_, i): Point => {
      const a = i * 0.2;
      return [0.07 * a * Math.cos(a), 0.07 * a * Math.sin(a)];
    });
    expect(coveredArea([sewn(spiral)])).toBeGreaterThan(100);
    expect(coveredArea([sewn(fill(2, 2))]), 'a bar tack').toBe(0);
  });

  it('covers none where many lines cross, or run an allowance apart', () => {
    const star = Array.from({ length: 12 }, (_, k): Point[] => {
      const a = (k * Math.PI) / 12;
      const [x, y] = [40 * Math.cos(a), 40 * Math.sin(a)];
      return outAndBack(
        [
          [-x, -y],
          [x, y],
        ],
        2.8,
      );
    });
    expect(coveredArea(star)).toBe(0);
    const grid = Array.from({ length: 12 }, (_, k): Point[] =>
      evenly(
        [
          [0, 3 * k],
          [60, 3 * k],
        ],
        2.8,
      ),
    );
    expect(coveredArea(grid)).toBe(0);
  });
});
