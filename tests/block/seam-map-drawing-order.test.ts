import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import type { DrawnLine, LineDrawing } from '../../src/block/drawn-line.js';
import type { SeamMap } from '../../src/block/seam-map.js';
import { type Points, polylineLength, reversed } from '../../src/geometry/polyline.js';
import { countyBlock } from '../fixtures/counties.js';
import { box, circle, drawing } from './draw.js';

/** A block with every kind of meeting, and ends that nearly meet in twos and threes. */
const sample = drawing([
  box(0, 0, 100, 80),
  [
    [0, 30],
    [55, 30.2],
    [100, 28],
  ],
  [
    [40.1, 30.1],
    [40, 80],
  ],
  [
    [70, 0],
    [69.9, 29.4],
  ],
  [
    [69.8, 29.6],
    [85, 55],
  ],
  [
    [85.1, 55.1],
    [100, 60],
  ],
  [
    [85, 55.25],
    [80, 80],
  ],
  [
    [10, 0.1],
    [10, 29.9],
  ],
  [
    [10.1, 2],
    [10.2, 28],
  ],
  circle(20, 55, 9),
  [
    [55, 60],
    [60, 45],
    [75, 70],
  ],
]);

const change = (block: LineDrawing, each: (points: Points) => Points): LineDrawing => ({
  ...block,
  lines: block.lines.map((line) => ({ ...line, points: each(line.points) })),
});

/** The network without numbers: what must be the same however the block lies. */
function shape({ seams, junctions, patches, outline }: SeamMap) {
  const sorted = (values: number[]) => values.map((v) => Math.round(v * 1e4) / 1e4).sort((a, b) => a - b);
  return {
    lengths: sorted(seams.map(({ points }) => polylineLength(points))),
    corners: sorted(seams.map(({ corners }) => corners.length)),
    crossings: sorted(seams.map(({ crossings }) => crossings.length)),
    arms: sorted(junctions.map(({ arms }) => arms.length)),
    through: junctions.filter(({ through }) => through !== null).length,
    areas: sorted(patches.map(({ area }) => area)),
    outline: outline && Math.round(polylineLength(outline.points) * 1e4),
  };
}

describe('the seam map', () => {
  it('of the sample has the meetings that were drawn', () => {
    const { map } = { map: buildSeamMap(sample).map };
    // two across and down, the Y of three, the doubled line once, the ring, the hanging corner
    expect(map.patches).toHaveLength(8);
    expect(map.seams.filter(({ closed }) => closed)).toHaveLength(1);
  });

  it('does not change with the order or direction in which lines were drawn', () => {
    for (const block of [sample, countyBlock('50')]) {
      const expected = buildSeamMap(block).map;
      fc.assert(
        fc.property(
          fc.shuffledSubarray([...block.lines.keys()], { minLength: block.lines.length }),
          fc.array(fc.boolean(), { minLength: block.lines.length, maxLength: block.lines.length }),
          (order, turned) => {
            const lines = order.map((i): DrawnLine => {
              const line = block.lines[i];
              return turned[i] ? { ...line, points: reversed(line.points) } : line;
            });
            expect(buildSeamMap({ ...block, lines }).map).toEqual(expected);
          },
        ),
        { numRuns: 15 },
      );
    }
  });

  it('is the same network when the whole block is turned or mirrored', () => {
    for (const block of [sample, countyBlock('50')]) {
      const expected = shape(buildSeamMap(block).map);
      fc.assert(
        fc.property(fc.double({ min: 0, max: 6.28, noNaN: true }), fc.boolean(), (angle, mirror) => {
          const [c, s] = [Math.cos(angle), Math.sin(angle)];
          const moved = change(block, (points) =>
            points.map((_, i) => {
              const [x, y] = [points[i & ~1] * (mirror ? -1 : 1), points[i | 1]];
              return i % 2 ? s * x + c * y : c * x - s * y;
            }),
          );
          expect(shape(buildSeamMap(moved).map)).toEqual(expected);
        }),
        { numRuns: 15 },
      );
    }
  });

  it('survives ends that are off by less than half the tolerance', () => {
    const clean = drawing([
      box(0, 0, 90, 60),
      [
        [30, 0],
        [30, 60],
      ],
      [
        [30, 20],
        [90, 20],
      ],
      [
        [60, 20],
        [60, 60],
      ],
      [
        [0, 40],
        [30, 40],
      ],
    ]);
    const off = fc.double({ min: -0.1, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(fc.array(off, { minLength: 16, maxLength: 16 }), (noise) => {
        let k = 0;
        const noisy = {
          ...clean,
          lines: clean.lines.map((line) =>
            line.closed ? line : { ...line, points: line.points.map((v) => v + noise[k++]) },
          ),
        };
        const { map, findings } = buildSeamMap(noisy);
        expect(findings).toEqual([]);
        expect(map.patches).toHaveLength(5);
        expect(map.seams).toHaveLength(4);
        expect(map.junctions.map(({ arms }) => arms.length)).toEqual(
          buildSeamMap(clean).map.junctions.map(({ arms }) => arms.length),
        );
      }),
    );
  });

  it('numbers seams from the top left, each from its own upper left end', () => {
    const { seams } = buildSeamMap(countyBlock('19')).map;
    expect(seams.map(({ id }) => id)).toEqual(seams.map((_, i) => i + 1));
    const cell = (v: number) => Math.round(v * 10);
    seams.forEach(({ points }, i) => {
      const [x, y] = [cell(points[0]), cell(points[1])];
      const [ex, ey] = [cell(points[points.length - 2]), cell(points[points.length - 1])];
      expect(y < ey || (y === ey && x <= ex)).toBe(true);
      if (i === 0) return;
      const [px, py] = [cell(seams[i - 1].points[0]), cell(seams[i - 1].points[1])];
      expect(py < y || (py === y && px <= x)).toBe(true);
    });
  });
});
