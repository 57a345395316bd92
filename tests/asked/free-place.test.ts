import fc from 'fast-check';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import { describe, expect, test } from 'vitest';
import { ORNAMENT_CLEAR } from '../../src/asked/free-place.js';
import type { Block } from '../../src/block/block.js';
import { type Dressed, dress } from '../../src/dress.js';
import type { Dressing, KeepClear, PlacedOrnament } from '../../src/formats/dressing.js';
import type { Runs } from '../../src/needle/run.js';
import { defaultDressing, USUAL_THREADS } from '../../src/plan.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { builtIn } from '../stitches/dictionary.js';
import { oneSeam } from './dressed-line.js';

type XY = readonly [number, number];

const frame: XY[] = [
  [0, 0],
  [120, 0],
  [120, 90],
  [0, 90],
  [0, 0],
];
/** A block of 120 x 90 mm with a level seam across at y, and one from it down at x. */
const blockOf = (y: number, x: number, slant = 0): Block => ({
  ...oneSeam,
  map: mapOfLines(
    [
      frame,
      [
        [0, y],
        [120, y + slant],
      ],
      [
        [x, y + (slant * x) / 120],
        [x, 90],
      ],
    ],
    120,
    90,
  ),
});

function dressedWith(
  block: Block,
  ornaments: readonly PlacedOrnament[],
  more: { stitch?: string; keepClear?: readonly KeepClear[] } = {},
): Dressed {
  const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
  const { stitch = 'herringbone', keepClear } = more;
  const plain = defaultDressing(block.map, { source, dictionary: builtIn, stitch });
  const dressing: Dressing = { ...plain, threads: USUAL_THREADS, ornaments, keepClear };
  return dress(block, dressing, builtIn);
}
const placed = (ornament: string, more: Partial<PlacedOrnament>): PlacedOrnament => ({
  ornament,
  parameters: {},
  thread: 0,
  passes: 3,
  ...more,
});

const stopsOf = ({ design }: Dressed, kind: 'ornament' | 'treatment') =>
  design.stops.filter((stop) => stop.kind === kind).map(({ runs }) => runs);
const pointsOf = (runs: readonly Runs[]): XY[] =>
  runs.flatMap(({ xy }) => Array.from({ length: xy.length / 2 }, (_, i): XY => [xy[2 * i], xy[2 * i + 1]]));
const extent = (points: readonly XY[], axis: 0 | 1) => {
  const values = points.map((p) => p[axis]);
  return Math.max(...values) - Math.min(...values);
};
const codes = ({ findings }: Dressed) =>
  findings.map(({ code }) => code).filter((code) => code.startsWith('ornament'));

/** JTS (jsts): DistanceOp, the least distance between points and lines. */
const factory = new GeometryFactory();
const coordinates = (line: Float64Array) =>
  Array.from({ length: line.length / 2 }, (_, i) => new Coordinate(line[2 * i], line[2 * i + 1]));
function apart(points: readonly XY[], lines: readonly Float64Array[]): number {
  const all = factory.createMultiPointFromCoords(points.map(([x, y]) => new Coordinate(x, y)));
  const lineStrings = lines.map((line) => factory.createLineString(coordinates(line)));
  return DistanceOp.distance(all, factory.createMultiLineString(lineStrings));
}
const threads = (runs: readonly Runs[]) =>
  runs.flatMap(({ xy, start }) =>
    Array.from({ length: start.length - 1 }, (_, r) => xy.slice(2 * start[r], 2 * start[r + 1])),
  );

describe('an ornament that names a patch', () => {
  test('stands clear of seams, thread and what is kept clear, whatever it is and wherever they lie', () => {
    const names = fc.constantFrom(...builtIn.ornaments.keys());
    const misses: unknown[] = [];
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 60, noNaN: true }),
        fc.double({ min: 25, max: 95, noNaN: true }),
        fc.double({ min: -15, max: 15, noNaN: true }),
        fc.array(names, { minLength: 1, maxLength: 4 }),
        fc.constantFrom('herringbone', 'feather', 'cretan'),
        fc.tuple(fc.double({ min: 0, max: 120, noNaN: true }), fc.double({ min: 0, max: 90, noNaN: true })),
        (y, x, slant, list, stitch, at) => {
          const block = blockOf(y, x, slant);
          const keepClear = [{ name: 'charm', circle: { at, radius: 7 } }];
          const ornaments = list.map((name, k) =>
            placed(name, { patch: 1 + (k % 3), turn: k % 2 ? 'fit' : 0 }),
          );
          const dressed = dressedWith(block, ornaments, { stitch, keepClear });
          const points = pointsOf(stopsOf(dressed, 'ornament'));
          if (points.length === 0) return;
          const lines = [
            ...threads(stopsOf(dressed, 'treatment')),
            ...block.map.patches.map(({ boundary }) => boundary),
          ];
          const charm = Math.min(...points.map((p) => Math.hypot(p[0] - at[0], p[1] - at[1]))) - 7;
          const clear = Math.min(apart(points, lines), charm);
          if (clear < ORNAMENT_CLEAR) misses.push({ list, stitch, clear });
        },
      ),
      { numRuns: 25 },
    );
    expect(misses).toEqual([]);
  });

  test('keeps the size it was asked for where there is room', () => {
    const free = dressedWith(blockOf(45, 60), [placed('daisy', { patch: 1 })]);
    expect(codes(free)).toEqual([]);
    expect(extent(pointsOf(stopsOf(free, 'ornament')), 1)).toBeCloseTo(14, 0);
    // in the middle of what is bare above the seam, and of its length
    const points = pointsOf(stopsOf(free, 'ornament'));
    const middle = (axis: 0 | 1) => points.reduce((sum, p) => sum + p[axis], 0) / points.length;
    expect(Math.abs(middle(0) - 60)).toBeLessThan(8);
    expect(Math.abs(middle(1) - 20)).toBeLessThan(3);
  });

  test('is made smaller to fit, down to its smallest good size, and left out below that, with a finding each', () => {
    const inStrip = (y: number) =>
      dressedWith(blockOf(y, 60), [placed('daisy', { patch: 1, parameters: { size: 20 } })]);
    const [smaller, out] = [inStrip(22), inStrip(12)];
    expect(codes(smaller)).toEqual(['ornament-smaller']);
    const size = extent(pointsOf(stopsOf(smaller, 'ornament')), 1);
    expect(size).toBeLessThan(20);
    expect(size).toBeGreaterThanOrEqual(9);
    expect(codes(out)).toEqual(['ornament-no-room']);
    expect(stopsOf(out, 'ornament')).toEqual([]);
  });

  test('may be named by a place in it, and means the patch that lies there', () => {
    const byPlace = dressedWith(blockOf(45, 60), [placed('daisy', { patch: { at: [100, 80] } })]);
    const id = byPlace.block.map.patches.findIndex(({ boundary }) => {
      const xs = Array.from({ length: boundary.length / 2 }, (_, i) => boundary[2 * i]);
      return Math.min(...xs) > 59;
    });
    const byNumber = dressedWith(blockOf(45, 60), [placed('daisy', { patch: id + 1 })]);
    expect(pointsOf(stopsOf(byPlace, 'ornament'))).toEqual(pointsOf(stopsOf(byNumber, 'ornament')));
  });

  test('takes the room that the one before it has left', () => {
    const two = dressedWith(blockOf(45, 60), [
      placed('daisy', { patch: 1 }),
      placed('spider-web', { patch: 1 }),
    ]);
    const [petals, heart, web] = stopsOf(two, 'ornament');
    expect(apart(pointsOf([web]), threads([petals, heart]))).toBeGreaterThanOrEqual(ORNAMENT_CLEAR);
  });

  test('turned to fit lies along a patch that is longer than wide', () => {
    const upright = dressedWith(blockOf(28, 60), [
      placed('leaf-spray', { patch: 1, parameters: { size: 16 } }),
    ]);
    const turned = dressedWith(blockOf(28, 60), [
      placed('leaf-spray', { patch: 1, parameters: { size: 16 }, turn: 'fit' }),
    ]);
    const [a, b] = [upright, turned].map((one) => pointsOf(stopsOf(one, 'ornament')));
    expect(extent(a, 1)).toBeGreaterThan(1.4 * extent(a, 0));
    expect(extent(b, 0)).toBeGreaterThan(1.4 * extent(b, 1));
  });

  test('that there is not is refused with the patches there are', () => {
    expect(() => dressedWith(blockOf(45, 60), [placed('daisy', { patch: 7 })])).toThrow(
      expect.objectContaining({
        code: 'unknown-patch',
        where: 'ornament 1',
        right: 'its patches are 1 to 3',
      }),
    );
    expect(() => dressedWith(blockOf(45, 60), [placed('daisy', { patch: { at: [500, 0] } })])).toThrow(
      expect.objectContaining({ code: 'unknown-patch', wrong: 'there is no patch at 500, 0' }),
    );
  });
});

describe('an ornament that has its own place', () => {
  test('is left out where that is kept clear, and a finding says so', () => {
    const keepClear = [
      {
        name: 'monogram',
        polygon: [
          [50, 10],
          [70, 10],
          [70, 30],
          [50, 30],
        ] as XY[],
      },
    ];
    const at = (x: number) => dressedWith(blockOf(45, 60), [placed('daisy', { at: [x, 20] })], { keepClear });
    // 14 mm across: at 78.2 mm its petals end 1.2 mm beside the area, and 0.6 mm are asked for
    expect(codes(at(60))).toEqual(['ornament-kept-out']);
    expect(codes(at(77))).toEqual(['ornament-kept-out']);
    expect(codes(at(79))).toEqual([]);
    expect(stopsOf(at(60), 'ornament')).toEqual([]);
  });
});
