import { Bezier } from 'bezier-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CurveNode, fittedCurve } from '../../src/geometry/fitted-curve.js';
import { nearestOnSegment } from '../../src/geometry/nearest.js';
import type { Point } from '../../src/geometry/point.js';
import { fromPoints } from '../../src/geometry/polyline.js';

const TOLERANCE = 0.008;

/** Places along fitted curves, by bezier-js. */
function placesOn(nodes: readonly CurveNode[]): Point[] {
  return nodes.slice(1).flatMap((to, i): Point[] => {
    const from = nodes[i];
    const [b, c] = [from.after ?? [0, 0], to.before ?? [0, 0]];
    const curve = new Bezier([
      ...from.at,
      from.at[0] + b[0],
      from.at[1] + b[1],
      to.at[0] + c[0],
      to.at[1] + c[1],
      ...to.at,
    ]);
    return curve.getLUT(60).map(({ x, y }) => [x, y]);
  });
}
const offLine = (p: Point, line: readonly Point[]): number =>
  Math.min(...line.slice(1).map((b, i) => nearestOnSegment(p, line[i], b).distance));

const coordinate = fc.double({ min: 0, max: 150, noNaN: true });
const place = fc.tuple(coordinate, coordinate);
const smooth = fc
  .tuple(place, place, place, place)
  .map((controls) => new Bezier(controls.flat()).getLUT(160).map(({ x, y }): Point => [x, y]));

describe('curves fitted to a line', () => {
  it('begin and end where it does, and stray from it less than they may, whatever the curve', () => {
    fc.assert(
      fc.property(smooth, (line) => {
        const nodes = fittedCurve(fromPoints(line), TOLERANCE);
        expect([nodes[0].at, nodes[nodes.length - 1].at]).toEqual([line[0], line[line.length - 1]]);
        const off = placesOn(nodes).map((p) => offLine(p, line));
        // between its points the line itself is chords, and no more true than this
        expect(Math.max(...off)).toBeLessThan(TOLERANCE + 0.012);
      }),
      { numRuns: 40 },
    );
  });

  it('are two for a quarter of a circle: one would stray by 0.00027 of its radius, which is too much', () => {
    const radius = 44;
    const arc = Array.from({ length: 120 }, (_, i): Point => {
      const angle = (Math.PI / 2) * (i / 119);
      return [radius * Math.sin(angle), radius * (1 - Math.cos(angle))];
    });
    const nodes = fittedCurve(fromPoints(arc), TOLERANCE);
    expect(nodes).toHaveLength(3);
    const off = placesOn(nodes).map(([x, y]) => Math.abs(Math.hypot(x, y - radius) - radius));
    expect(Math.max(...off)).toBeLessThan(TOLERANCE);
    // and they run into each other smoothly
    const [{ before, after }] = nodes.slice(1);
    expect(Math.abs(before![0] * after![1] - before![1] * after![0])).toBeLessThan(1e-6);
  });

  it('are straight where the line is, and have a point where it bends', () => {
    const line: Point[] = [
      [0, 0],
      [40, 0],
      [80, 8],
    ];
    const straight = (at: Point) => ({ at, before: null, after: null });
    expect(fittedCurve(fromPoints(line), TOLERANCE)).toEqual(line.map(straight));
  });
});
