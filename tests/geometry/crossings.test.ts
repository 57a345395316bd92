import fc from 'fast-check';
import LineIntersector from 'jsts/org/locationtech/jts/algorithm/RobustLineIntersector.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import { describe, expect, it } from 'vitest';
import { crossings } from '../../src/geometry/crossings.js';
import type { Point } from '../../src/geometry/point.js';
import { fromPoints } from '../../src/geometry/polyline.js';

const between = (a: Point[], b: Point[]) => crossings([fromPoints(a), fromPoints(b)]).map(({ at }) => at);

describe('crossings', () => {
  it('are found where lines cross, butt and share a vertex', () => {
    expect(
      between(
        [
          [0, 0],
          [10, 10],
        ],
        [
          [0, 10],
          [10, 0],
        ],
      ),
    ).toEqual([[5, 5]]);
    expect(
      between(
        [
          [0, 0],
          [10, 0],
        ],
        [
          [4, 0],
          [4, 9],
        ],
      ),
    ).toEqual([[4, 0]]);
    expect(
      between(
        [
          [0, 0],
          [10, 0],
        ],
        [
          [10, 0],
          [14, 9],
        ],
      ),
    ).toEqual([[10, 0]]);
    expect(
      between(
        [
          [0, 0],
          [10, 0],
        ],
        [
          [0, 1],
          [10, 1],
        ],
      ),
    ).toEqual([]);
  });

  it('of lines that lie on each other are the ends of what they share', () => {
    expect(
      between(
        [
          [0, 0],
          [10, 0],
        ],
        [
          [4, 0],
          [14, 0],
        ],
      ),
    ).toEqual([
      [4, 0],
      [10, 0],
    ]);
  });

  it('of a line with itself are found, its neighbors are not', () => {
    expect(
      crossings([
        fromPoints([
          [0, 0],
          [10, 0],
          [10, 5],
          [5, -5],
        ]),
      ]).map(({ at }) => at),
    ).toEqual([[7.5, 0]]);
  });

  // JTS (jsts): RobustLineIntersector
  it('agree with another library on random segments', () => {
    const point = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }));
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        fc.pre((a[0] !== b[0] || a[1] !== b[1]) && (c[0] !== d[0] || c[1] !== d[1]));
        const other = new LineIntersector();
        const [p, q, r, s] = [a, b, c, d].map(([x, y]) => new Coordinate(x, y));
        other.computeIntersection(p, q, r, s);
        expect(between([a, b], [c, d])).toHaveLength(other.getIntersectionNum());
      }),
      { numRuns: 2000 },
    );
  });
});
