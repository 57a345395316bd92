import { describe, expect, test } from 'vitest';
import { keptAreas } from '../../src/asked/keep-clear.js';
import type { Block } from '../../src/block/block.js';
import type { KeepClear } from '../../src/formats/dressing.js';
import { CHANGE, JUMP, STITCH, type StitchFile } from '../../src/formats/stitch-file.js';
import { insideArea } from '../../src/geometry/area.js';
import { areaIndex } from '../../src/geometry/area-index.js';
import { dressingOf, oneSeam } from './dressed-line.js';

type XY = readonly [number, number];

/** A stitch file of these stops: each is a list of runs, each a list of places in mm from the file's start, y down. */
function fileOf(stops: readonly (readonly (readonly XY[])[])[]): StitchFile {
  const kinds: number[] = [];
  const moves: number[] = [];
  let [x, y] = [0, 0];
  const go = (kind: number, [toX, toY]: XY) => {
    const [dx, dy] = [Math.round(10 * toX) - x, Math.round(10 * toY) - y];
    kinds.push(kind);
    moves.push(dx, -dy);
    [x, y] = [x + dx, y + dy];
  };
  stops.forEach((runs, s) => {
    if (s > 0) {
      kinds.push(CHANGE);
      moves.push(0, 0);
    }
    for (const run of runs) {
      go(JUMP, run[0]);
      for (const place of run.slice(1)) go(STITCH, place);
    }
  });
  return { kinds: Uint8Array.from(kinds), moves: Int16Array.from(moves) } as StitchFile;
}
const square = (x: number, y: number, side: number): XY[] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
  [x, y],
];
const kept = (block: Block, ...keepClear: KeepClear[]) => keptAreas(block, dressingOf({}, { keepClear }));

describe('what a dressing keeps clear', () => {
  test('are polygons, and circles with all of their inside', () => {
    const [polygon, circle] = kept(
      oneSeam,
      {
        name: 'photo',
        polygon: [
          [0, 0],
          [10, 0],
          [0, 10],
        ],
      },
      { name: 'charm', circle: { at: [50, 40], radius: 8 } },
    );
    expect(polygon.name).toBe('photo');
    expect([insideArea([2, 2], polygon.area), insideArea([8, 8], polygon.area)]).toEqual([true, false]);
    const away = areaIndex(circle.area);
    for (let degrees = 0; degrees < 360; degrees += 7) {
      const angle = (degrees * Math.PI) / 180;
      const distance = away(50 + 20 * Math.cos(angle), 40 + 20 * Math.sin(angle), 100);
      // never more than the circle is away, and less by no more than a hundredth
      expect(distance).toBeLessThanOrEqual(12 + 1e-9);
      expect(distance).toBeGreaterThan(12 - 0.02);
    }
  });

  test('are stops of a stitch file, piece by piece, where the block has them', () => {
    // the letters of the monogram are 20 mm apart, the strokes of the first 1 mm
    const existing = fileOf([[square(0, 0, 90)], [square(10, 10, 5), square(16, 10, 5), square(40, 10, 5)]]);
    const block: Block = { ...oneSeam, existing, stops: [1], origin: [2, 3] };
    const [{ name, area }] = kept(block, { name: 'monogram', stops: [2] });
    expect(name).toBe('monogram');
    expect(area.rings).toHaveLength(2);
    const inside = (x: number, y: number) => insideArea([x - 2, y - 3], area);
    expect([inside(12, 12), inside(15.5, 12), inside(20, 12), inside(42, 12)]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect([inside(30, 12), inside(12, 20), inside(60, 60)]).toEqual([false, false, false]);
  });

  test('are refused where a drawing has no stops, or the file not these', () => {
    const refused = (block: Block, stops: number[]) => () => kept(block, { name: 'monogram', stops });
    const existing = fileOf([[square(0, 0, 90)], []]);
    const block: Block = { ...oneSeam, existing, stops: [1] };
    expect(refused(oneSeam, [1])).toThrow(
      expect.objectContaining({ code: 'no-stops', where: 'keepClear 1' }),
    );
    expect(refused(block, [7])).toThrow(
      expect.objectContaining({ code: 'no-such-stop', right: 'the file has 1 to 2', path: ['keepClear', 0] }),
    );
    expect(refused(block, [2])).toThrow(
      expect.objectContaining({ code: 'empty-stop', wrong: 'nothing is sewn in stop 2' }),
    );
  });
});
