import { describe, expect, it } from 'vitest';
import { sewnLines } from '../../src/block/sewn-lines.js';
import { MOST_STITCHES } from '../../src/block/sewn-passes.js';
import { readDst } from '../../src/formats/dst-read.js';
import type { Point } from '../../src/geometry/point.js';
import { InputError } from '../../src/input-error.js';
import { PANEL_STOPS, piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import { evenly, type Run, type SewnStop, sewnFile, tied, zigzag } from '../fixtures/pieced-sewing.js';
import { nearestTo } from './sewn-measure.js';
import { readBack } from './sewn-read-back.js';

const refusal = (stops: readonly number[], sewn: readonly SewnStop[]): string => {
  try {
    sewnLines(readDst(sewnFile(sewn, [0, 0], 'TEST'), 'a.dst'), stops, 'a.dst');
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  return 'not refused';
};

const seam: SewnStop = [
  tied(
    evenly(
      [
        [0, 0],
        [40, 9],
      ],
      2.5,
    ),
  ),
];

describe('stops named as seams', () => {
  it('must exist, and the refusal says how many there are', () => {
    expect(refusal([3], [seam, seam])).toMatch(/a\.dst: there is no stop 3; it has 2 stops, 1 to 2/);
    expect(refusal([0], [seam])).toMatch(/there is no stop 0; it has one stop/);
    expect(refusal([1.5], [seam, seam])).toMatch(/there is no stop 1\.5/);
    expect(refusal([Number.NaN], [seam, seam])).toMatch(/there is no stop NaN/);
    expect(refusal([], [seam, seam])).toMatch(/no color stop was named/);
  });

  it('must hold stitches', () => {
    expect(refusal([2], [seam, [], seam])).toMatch(/a\.dst stop 2: it holds no stitches/);
  });

  it('must be sewn in plain stitches, which no edge of the panel is', () => {
    const file = readDst(piecedPanel(), 'panel.dst');
    PANEL_STOPS.forEach(({ title }, i) => {
      const read = () => sewnLines(file, [i + 1], 'panel.dst');
      if (title.startsWith('edge')) expect(read, title).toThrow(/zigzag or satin/);
      else expect(read().lines.length, title).toBeGreaterThan(0);
    });
  });

  it('are told from zigzags of every usual width and pitch', () => {
    const line: Point[] = [
      [0, 0],
      [60, 20],
    ];
    for (const width of [1.5, 2, 3, 4, 6]) {
      for (const pitch of [0.2, 0.4, 0.8, 1.2]) {
        expect(refusal([1], [[zigzag(line, width, pitch)]]), `${width} x ${pitch}`).toMatch(/zigzag/);
      }
    }
  });

  it('must hold more than ties', () => {
    const tie: SewnStop = [
      [
        [0, 0],
        [0.6, 0],
        [0, 0],
        [0.6, 0],
      ],
    ];
    expect(refusal([1], [tie])).toMatch(/nothing but ties/);
  });

  it('must hold no more stitches than seam lines do, all of them together', () => {
    // 300 lines of 100 mm, 2 mm apart: 30 m of seams and half the stitches that are read
    const line = (y: number): Run =>
      evenly(
        [
          [0, y],
          [100, y],
        ],
        100 / Math.floor(MOST_STITCHES / 590),
      );
    const half: SewnStop = Array.from({ length: 300 }, (_, i) => line(2 * i));
    expect(refusal([1, 2], [half, half])).toMatch(
      /a\.dst: the stops named hold \d+ stitches, more than any seam/,
    );
  });

  it('count once when named twice', () => {
    const file = readDst(sewnFile([seam], [0, 0], 'TEST'), 'a.dst');
    expect(sewnLines(file, [1, 1], 'a.dst')).toEqual(sewnLines(file, [1], 'a.dst'));
  });

  it('give the same lines in whatever order they are named', () => {
    const file = readDst(piecedPanel(), 'panel.dst');
    const lines = (stops: readonly number[]) =>
      sewnLines(file, stops, 'panel.dst')
        .lines.map(({ points, where }) => `${where}: ${[...points].map((v) => v.toFixed(2)).join(' ')}`)
        .sort();
    expect(lines([...SEAM_STOPS].reverse())).toEqual(lines(SEAM_STOPS));
  });
});

describe('a run', () => {
  const line: readonly [Point, Point] = [
    [10, 10],
    [60, 25],
  ];
  const plain = evenly(line, 2.5);
  const [start, end] = [plain[0], plain[plain.length - 1]];
  const read = (run: Run) => readBack([[run]]);
  const beside = ([x, y]: Point, dx: number, dy: number): Point => [x + dx, y + dy];

  it('may be tied backward, across the line, or in a little triangle', () => {
    const ties: Run[] = [
      [start, beside(start, -0.7, -0.2), start],
      [start, beside(start, -0.2, 0.5), start, beside(start, 0.2, -0.5), start],
      [beside(start, 0.7, 0.2), beside(start, 0.2, 0.8), start],
    ];
    for (const tie of ties) {
      const found = read([...tie, ...plain.slice(1)]);
      expect(found.length).toBe(1);
      expect(nearestTo([start, end], found)).toBeLessThan(0.8);
    }
  });

  it('may be reached by a first stitch from beside the line', () => {
    const found = read([beside(start, -3, 9), ...plain]);
    expect(found.length).toBe(1);
    expect(nearestTo([start, end], found)).toBeLessThan(0.1);
  });
});
