import fc from 'fast-check';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { describe, expect, it } from 'vitest';
import { clipLine } from '../../src/geometry/clip-line.js';
import { fromPoints, type Points, polylineLength, toPoints } from '../../src/geometry/polyline.js';

const box = { left: 0, top: 0, right: 10, bottom: 6 };
/** On hundredths: the other library does not stand lengths near the least number there is. */
const off = fc.integer({ min: -500, max: 1500 }).map((hundredths) => hundredths / 100);
const straights = fc.tuple(off, off, off, off).map((ends) => Float64Array.from(ends));
const lines = fc.array(fc.tuple(off, off), { minLength: 2, maxLength: 12 }).map(fromPoints);

/** JTS (jsts): OverlayOp, the length of a straight line inside a rectangle. */
const factory = new GeometryFactory();
const corners = [
  [0, 0],
  [10, 0],
  [10, 6],
  [0, 6],
  [0, 0],
].map(([x, y]) => new Coordinate(x, y));
const rectangle = factory.createPolygon(factory.createLinearRing(corners));
function lengthInside(line: Points): number {
  const drawn = factory.createLineString(toPoints(line).map(([x, y]) => new Coordinate(x, y)));
  return OverlayOp.overlayOp(drawn, rectangle, OverlayOp.INTERSECTION).getLength();
}
const total = (parts: readonly Points[]) => parts.reduce((sum, part) => sum + polylineLength(part), 0);

describe('a line cut to a box', () => {
  it('keeps as much of a straight as another library says', () => {
    fc.assert(
      fc.property(straights, (line) => Math.abs(total(clipLine(line, box)) - lengthInside(line)) < 1e-6),
    );
  });

  it('is the sum of its cut segments, and nothing of it lies outside', () => {
    fc.assert(
      fc.property(lines, (line) => {
        const parts = clipLine(line, box);
        const segments = Array.from({ length: line.length / 2 - 1 }, (_, i) => line.slice(2 * i, 2 * i + 4));
        const apart = segments.flatMap((segment) => clipLine(segment, box));
        const points = parts.flatMap(toPoints);
        return (
          Math.abs(total(parts) - total(apart)) < 1e-9 &&
          points.every(([x, y]) => x > -1e-9 && x < 10 + 1e-9 && y > -1e-9 && y < 6 + 1e-9)
        );
      }),
    );
  });

  it('stays one line while it is inside, and is the same line where it never leaves', () => {
    const inside = Float64Array.of(1, 1, 4, 5, 9, 2);
    expect(clipLine(inside, box)).toEqual([inside]);
    expect(clipLine(Float64Array.of(-5, 3, 5, 3, 15, 3), box)).toEqual([Float64Array.of(0, 3, 5, 3, 10, 3)]);
    expect(clipLine(Float64Array.of(5, -4, 5, 3, 15, 3, 15, 5, 5, 5), box)).toHaveLength(2);
    expect(clipLine(Float64Array.of(-1, -1, -1, 7), box)).toEqual([]);
  });
});
