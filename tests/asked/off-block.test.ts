import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offBlock } from '../../src/asked/off-block.js';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import { dress } from '../../src/dress.js';
import { fromPoints } from '../../src/geometry/polyline.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { builtIn } from '../stitches/dictionary.js';
import { dressingOf, oneSeam } from './dressed-line.js';

type XY = readonly [number, number];

const square = (x: number, y: number, half: number) =>
  fromPoints([
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
    [x - half, y - half],
  ]);
/** Filled squares of 40 mm by their middles, on a drawing of 200 mm: patches. */
const patches = (...middles: XY[]) =>
  buildSeamMap({
    width: 200,
    height: 200,
    origin: [0, 0],
    lines: middles.map(([x, y]) => ({
      points: square(x, y, 20),
      closed: true,
      fill: '#777777',
      where: 'a square',
    })),
  }).map;
const said = (hull: ReturnType<typeof square>, map: ReturnType<typeof patches>) =>
  offBlock('ornament 1 (daisy)', hull, map).map(({ level, message }) => `${level}: ${message}`);
const within = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });

describe('an ornament', () => {
  const two = patches([60, 60], [100, 60]);

  test('inside the outline is nothing to speak of, across a seam or not', () => {
    fc.assert(
      fc.property(within(46, 114), within(46, 74), within(1, 5), (x, y, half) => {
        expect(said(square(x, y, half), two)).toEqual([]);
      }),
    );
  });

  test('partly past the edge of the block is told with how far', () => {
    fc.assert(
      fc.property(within(0.2, 7.8), (past) => {
        const [one] = said(square(60, 40 - past + 4, 4), two);
        expect(one).toContain('note: ornament 1 (daisy) reaches');
        expect(Math.abs(Number(/([\d.]+) mm/.exec(one)![1]) - past)).toBeLessThan(0.051);
      }),
    );
  });

  test('beside the block altogether is a warning', () => {
    expect(said(square(160, 60, 5), two)[0]).toContain('warning: ornament 1 (daisy) lies beside the block');
    expect(said(square(-300, 60, 5), two)[0]).toContain('beside the block');
  });

  test('on another part of the block lies on it, and between its parts beside it', () => {
    const apart = patches([60, 60], [140, 140]);
    expect(said(square(140, 140, 10), apart)).toEqual([]);
    expect(said(square(100, 100, 10), apart)[0]).toContain('lies beside the block');
  });

  test('larger than the block, lies on it and past its edge', () => {
    // its corners stand 30 and 50 mm off those of the block
    expect(said(square(80, 60, 70), two)[0]).toContain('58.3 mm past the edge');
  });

  test('on a drawing of lines that close nothing is held to the drawing', () => {
    const line = mapOfLines([
      [
        [20, 100],
        [120, 100],
      ],
    ]);
    expect(said(square(100, 60, 5), line)).toEqual([]);
    expect(said(square(205, 60, 8), line)[0]).toContain('13.0 mm past');
    expect(said(square(230, 60, 8), line)[0]).toContain('beside the block');
  });

  test('asked for beside the block is told by the whole work', () => {
    const placed = { ornament: 'daisy', at: [260, 60], parameters: {}, thread: 1, passes: 2 } as const;
    const { findings } = dress(oneSeam, dressingOf({}, { ornaments: [placed] }), builtIn);
    expect(findings.filter(({ code }) => code === 'ornament-off-block')).toHaveLength(1);
  });
});
