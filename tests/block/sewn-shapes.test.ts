import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import { sewnLines } from '../../src/block/sewn-lines.js';
import { readDst } from '../../src/formats/dst-read.js';
import type { Point } from '../../src/geometry/point.js';
import { polylineLength } from '../../src/geometry/polyline.js';
import {
  evenly,
  outAndBack,
  overrun,
  type Run,
  type SewnStop,
  sewnFile,
  tied,
} from '../fixtures/pieced-sewing.js';
import { nearestTo } from './sewn-measure.js';
import { readBack } from './sewn-read-back.js';

const stitch = fc.double({ min: 1.5, max: 4, noNaN: true });
const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
const degrees = (from: number, to: number) =>
  fc.double({ min: (from * Math.PI) / 180, max: (to * Math.PI) / 180, noNaN: true });

/** Points of a circle, chords of half a degree. */
function circle(radius: number, from: number, sweep: number): Point[] {
  const count = Math.ceil((Math.abs(sweep) * 360) / Math.PI);
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const theta = from + (sweep * i) / count;
    return [80 + radius * Math.cos(theta), 80 + radius * Math.sin(theta)];
  });
}

/** A line of straight sides: lengths of the sides and the turn after each. */
function bent(start: number, sides: readonly (readonly [length: number, turn: number])[]): Point[] {
  const points: Point[] = [[50, 50]];
  let heading = start;
  for (const [length, turn] of sides) {
    const [x, y] = points[points.length - 1];
    points.push([x + length * Math.cos(heading), y + length * Math.sin(heading)]);
    heading += turn;
  }
  return points;
}

/** Stitches of even length that take no notice of corners, as some programs lay them. */
function acrossCorners(line: readonly Point[], stitch: number): Point[] {
  const points = [line[0]];
  let rest = stitch;
  for (let i = 1; i < line.length; i++) {
    let [x, y] = line[i - 1];
    let left = Math.hypot(line[i][0] - x, line[i][1] - y);
    const [dx, dy] = [(line[i][0] - x) / left, (line[i][1] - y) / left];
    while (left >= rest) {
      [x, y] = [x + rest * dx, y + rest * dy];
      points.push([x, y]);
      left -= rest;
      rest = stitch;
    }
    rest -= left;
  }
  return [...points, line[line.length - 1]];
}

describe('a curved seam', () => {
  it('of radius 10 mm and more is read as its arc, not as the chords of its stitches', () => {
    const arcs = fc.record({
      radius: fc.double({ min: 10, max: 120, noNaN: true }),
      length: fc.double({ min: 25, max: 70, noNaN: true }),
      from: angle,
      stitch,
      twice: fc.boolean(),
    });
    fc.assert(
      fc.property(arcs, ({ radius, length, from, stitch, twice }) => {
        const arc = circle(radius, from, Math.min(length / radius, 1.7 * Math.PI));
        const read = readBack([[tied(twice ? outAndBack(arc, stitch) : evenly(arc, stitch))]]);
        expect(read.length).toBe(1);
        expect(nearestTo(arc, read)).toBeLessThan(0.2);
      }),
      { numRuns: 150 },
    );
  });

  it('that goes over into straight sides without a corner has none when read', () => {
    const radius = 20;
    const line: Point[] = [
      [20, 60],
      ...circle(radius, Math.PI / 2, -Math.PI / 2).map(([x, y]): Point => [x, y - 40]),
      [100, 0],
    ];
    const [read] = readBack([[tied(evenly(line, 2.7))]]);
    const turns = read.slice(1, -1).map((p, i) => {
      const [a, b] = [read[i], read[i + 2]];
      return Math.abs(
        Math.atan2(
          (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]),
          (p[0] - a[0]) * (b[0] - p[0]) + (p[1] - a[1]) * (b[1] - p[1]),
        ),
      );
    });
    expect(nearestTo(line, [read])).toBeLessThan(0.2);
    expect(Math.max(...turns)).toBeLessThan((10 * Math.PI) / 180);
  });
});

describe('a seam with corners', () => {
  const sides = fc.array(fc.tuple(fc.double({ min: 14, max: 50, noNaN: true }), degrees(40, 110)), {
    minLength: 2,
    maxLength: 3,
  });

  it('has them where its sides meet', () => {
    fc.assert(
      fc.property(angle, sides, stitch, fc.boolean(), (start, sides, stitch, twice) => {
        const line = bent(start, sides);
        const read = readBack([[tied(twice ? outAndBack(line, stitch) : evenly(line, stitch))]]);
        expect(read.length).toBe(1);
        expect(nearestTo(line, read)).toBeLessThan(0.2);
      }),
      { numRuns: 150 },
    );
  });

  it('has them there even if no needle point is on them', () => {
    fc.assert(
      fc.property(angle, sides, stitch, (start, sides, stitch) => {
        const line = bent(start, sides);
        const read = readBack([[acrossCorners(line, stitch)]]);
        expect(nearestTo(line, read)).toBeLessThan(0.3);
      }),
      { numRuns: 150 },
    );
  });
});

describe('a closed line', () => {
  it('sewn as a ring, with an overlap or up to its first hole, comes back closed', () => {
    const rings = fc.record({ radius: fc.double({ min: 10, max: 50, noNaN: true }), from: angle, stitch });
    fc.assert(
      fc.property(rings, fc.double({ min: 0, max: 5, noNaN: true }), ({ radius, from, stitch }, overlap) => {
        const read = readBack([[tied(evenly(circle(radius, from, 2 * Math.PI + overlap / radius), stitch))]]);
        expect(read.length).toBe(1);
        expect(read[0][0]).toEqual(read[0][read[0].length - 1]);
        expect(nearestTo(circle(radius, 0, 2 * Math.PI), read)).toBeLessThan(0.2);
      }),
      { numRuns: 100 },
    );
  });

  it('begun in the middle of a side has corners at its corners alone', () => {
    const box: Point[] = [
      [40, 0],
      [100, 0],
      [100, 70],
      [0, 70],
      [0, 0],
      [45, 0],
    ];
    const [read] = readBack([[tied(evenly(box, 2.5))]]);
    expect(read.length).toBe(5);
    expect(
      nearestTo(
        [
          [0, 0],
          [100, 0],
          [100, 70],
          [0, 70],
          [0, 0],
        ],
        [read],
      ),
    ).toBeLessThan(0.1);
  });
});

describe('seams that cross or end on one another', () => {
  const sew = (line: readonly Point[], over = 0): Run => tied(outAndBack(overrun(line, over, over), 2.7));

  it('keep a crossing that both pass by more than the allowance', () => {
    const read = readBack([
      [
        sew([
          [0, 30],
          [80, 40],
        ]),
      ],
      [
        sew([
          [40, 0],
          [45, 70],
        ]),
      ],
    ]);
    expect(
      nearestTo(
        [
          [0, 30],
          [80, 40],
        ],
        read,
      ),
    ).toBeLessThan(0.1);
    expect(
      nearestTo(
        [
          [40, 0],
          [45, 70],
        ],
        read,
      ),
    ).toBeLessThan(0.1);
  });

  it('lie at their crossing as they were sewn: the later one runs over the earlier, however straight either is', () => {
    const kinked: Point[] = [
      [0, 30],
      [40, 35],
      [80, 33],
    ];
    const straight: Point[] = [
      [40, 0],
      [40, 70],
    ];
    const overAt = (stops: readonly SewnStop[], named: readonly number[]) => {
      const file = readDst(sewnFile(stops, [60, 70], 'TEST'), 'test.dst');
      const { map } = buildSeamMap(sewnLines(file, named, 'test.dst'));
      const crossing = map.junctions.filter(({ arms }) => arms.length === 4);
      expect(crossing).toHaveLength(1);
      const { points } = map.seams[crossing[0].through! - 1];
      return Math.abs(points[0] - points[points.length - 2]) > 40 ? 'kinked' : 'straight';
    };
    expect(overAt([[sew(straight)], [sew(kinked)]], [1, 2])).toBe('kinked');
    expect(overAt([[sew(kinked)], [sew(straight)]], [1, 2])).toBe('straight');
    // in one stop, too, and whatever order the stops are named in
    expect(overAt([[sew(straight), sew(kinked)]], [1])).toBe('kinked');
    expect(overAt([[sew(straight)], [sew(kinked)]], [2, 1])).toBe('kinked');
    // a seam sewn again later counts as sewn then
    expect(overAt([[sew(straight)], [sew(kinked)], [sew(straight)]], [1, 2, 3])).toBe('straight');
  });

  it('make a corner when both run over it', () => {
    const read = readBack([
      [
        sew(
          [
            [0, 0],
            [60, 0],
          ],
          5,
        ),
      ],
      [
        sew(
          [
            [60, 0],
            [70, 50],
          ],
          5,
        ),
      ],
    ]);
    const ends = read.flatMap((line) => [line[0], line[line.length - 1]]);
    expect(ends.filter(([x, y]) => Math.hypot(x - 60, y) < 0.1).length).toBe(2);
  });

  it('make a Y when three run over it', () => {
    const arms: Point[][] = [
      [
        [50, 50],
        [90, 40],
      ],
      [
        [50, 50],
        [20, 20],
      ],
      [
        [50, 50],
        [40, 95],
      ],
    ];
    const read = readBack(arms.map((line) => [sew(line, 5)]));
    const ends = read.flatMap((line) => [line[0], line[line.length - 1]]);
    expect(ends.filter(([x, y]) => Math.hypot(x - 50, y - 50) < 0.3).length).toBe(3);
  });

  it('are one line when sewn straight on, stretch by stretch, in stops of their own', () => {
    const read = readBack([
      [
        sew(
          [
            [0, 10],
            [30, 16],
          ],
          2,
        ),
      ],
      [
        sew(
          [
            [30, 16],
            [60, 22],
          ],
          2,
        ),
      ],
      [
        sew(
          [
            [60, 22],
            [90, 28],
          ],
          2,
        ),
      ],
    ]);
    expect(read.length).toBe(1);
    expect(
      nearestTo(
        overrun(
          [
            [0, 10],
            [90, 28],
          ],
          2,
          2,
        ),
        read,
      ),
    ).toBeLessThan(0.15);
  });

  it('are told apart in one unbroken run that travels back over a seam to reach the next', () => {
    const run = evenly(
      [
        [0, 0],
        [60, 0],
        [30, 0],
        [30, 50],
      ],
      2.5,
    );
    const file = readDst(sewnFile([[run]], [30, 30], 'TEST'), 'test.dst');
    const { map } = buildSeamMap(sewnLines(file, [1], 'test.dst'));
    expect(map.seams.map((seam) => Math.round(polylineLength(seam.points)))).toEqual([60, 50]);
    expect(map.junctions.find(({ through }) => through === 1)?.arms.length).toBe(3);
  });
});

describe('a line of threefold stitches', () => {
  it('is read as the line it is', () => {
    const holes = evenly(
      [
        [0, 0],
        [50, 20],
      ],
      2.5,
    );
    const run = holes.flatMap((p, i) => (i ? [p, holes[i - 1], p] : [p]));
    const read = readBack([[run]]);
    expect(read.length).toBe(1);
    expect(
      nearestTo(
        [
          [0, 0],
          [50, 20],
        ],
        read,
      ),
    ).toBeLessThan(0.1);
  });
});
