import fc from 'fast-check';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, it } from 'vitest';
import { shifted, traceLine, traceRing } from '../../src/draw/pen.js';
import { pathData } from '../../src/draw/svg-pen.js';
import { fromPoints, polylineLength } from '../../src/geometry/polyline.js';

const mm = fc.double({ min: -300, max: 300, noNaN: true });
const lines = fc.array(fc.tuple(mm, mm), { minLength: 2, maxLength: 200 });

/** Adds up relative moves as a reader of the path data does. */
function endOf(data: string): [number, number] {
  const numbers = data.match(/-?[\d.]+/g)!.map(Number);
  let [x, y] = [0, 0];
  for (let i = 0; i < numbers.length; i += 2) {
    x += numbers[i];
    y += numbers[i + 1];
  }
  return [x, y];
}

describe('the pen that writes SVG path data', () => {
  it('ends a long line where the line ends: rounding does not add up', () => {
    fc.assert(
      fc.property(lines, (points) => {
        const [x, y] = endOf(pathData((pen) => traceLine(pen, fromPoints(points))));
        const [toX, toY] = points[points.length - 1];
        expect(Math.hypot(x - toX, y - toY)).toBeLessThan(0.0072);
      }),
    );
  });

  it('draws a line as long as it is, by the measure of another library (svg-path-properties)', () => {
    const points = fromPoints(Array.from({ length: 40 }, (_, i) => [i * 2.5, 10 * Math.sin(i)] as const));
    const data = pathData((pen) => traceLine(pen, points));
    expect(new svgPathProperties(data).getTotalLength()).toBeCloseTo(polylineLength(points), 1);
  });

  it('closes a ring without drawing its first point twice', () => {
    const square = fromPoints([
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
      [0, 0],
    ]);
    expect(pathData((pen) => traceRing(pen, square))).toBe('M0 0l2 0l0 2l-2 0z');
  });

  it('draws the same aside when shifted', () => {
    const points = fromPoints([
      [1, 1],
      [4, 5],
    ]);
    expect(pathData((pen) => traceLine(shifted(pen, 2, -1), points))).toBe('M3 0l3 4');
  });
});
