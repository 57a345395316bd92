import { describe, expect, it } from 'vitest';
import { sewnLines } from '../../src/block/sewn-lines.js';
import { readDst } from '../../src/formats/dst-read.js';
import type { Point } from '../../src/geometry/point.js';
import { InputError } from '../../src/input-error.js';
import { PANEL_STOPS, piecedPanel } from '../fixtures/pieced-panel.js';
import { evenly, type SewnStop, sewnFile, tied, zigzag } from '../fixtures/pieced-sewing.js';

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

  it('count once when named twice', () => {
    const file = readDst(sewnFile([seam], [0, 0], 'TEST'), 'a.dst');
    expect(sewnLines(file, [1, 1], 'a.dst')).toEqual(sewnLines(file, [1], 'a.dst'));
  });
});
