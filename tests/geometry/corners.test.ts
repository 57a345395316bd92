import { describe, expect, it } from 'vitest';
import { findCorners } from '../../src/geometry/corners.js';
import { ellipseCurve } from '../../src/geometry/ellipse.js';
import { flattenCurve } from '../../src/geometry/flatten.js';
import type { Point } from '../../src/geometry/point.js';
import { fromPoints } from '../../src/geometry/polyline.js';

const corners = (points: Point[], closed = false) => findCorners(fromPoints(points), closed);
const polygon = (sides: number, radius: number): Point[] =>
  Array.from({ length: sides + 1 }, (_, i) => {
    const angle = (2 * Math.PI * (i % sides)) / sides;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

describe('corners of a line', () => {
  it('stand where straight sides meet; a left turn as drawn is positive', () => {
    const [corner, ...rest] = corners([
      [0, 0],
      [10, 0],
      [10, -8],
    ]);
    expect(rest).toEqual([]);
    expect(corner.u).toBe(10);
    expect(corner.turn).toBeCloseTo(Math.PI / 2, 12);
  });

  it('need more than 25 degrees', () => {
    const bend = (degrees: number) => {
      const a = (degrees * Math.PI) / 180;
      return corners([
        [0, 0],
        [10, 0],
        [10 + 10 * Math.cos(a), 10 * Math.sin(a)],
      ]).length;
    };
    expect([bend(24), bend(26)]).toEqual([0, 1]);
  });

  it('are not made by flattening an arc, however tight', () => {
    for (const radius of [0.5, 3, 44, 500]) {
      const arc = ellipseCurve({ center: [0, 0], a: [radius, 0], b: [0, radius], from: 0, to: 5 });
      expect(corners(flattenCurve(arc))).toEqual([]);
    }
  });

  it('are not the chords of a coarse circle, but the sides of a square', () => {
    expect(corners(polygon(12, 8), true)).toEqual([]);
    expect(corners(polygon(4, 8), true).map(({ u }) => Math.round(u))).toEqual([0, 11, 23, 34]);
  });

  it('stand out from the chords of a curve that runs into them', () => {
    const arc = flattenCurve(ellipseCurve({ center: [0, 0], a: [20, 0], b: [0, 20], from: 0, to: 1 }));
    const end = arc[arc.length - 1];
    expect(corners([...arc, [end[0] + 10, end[1]]])).toHaveLength(1);
  });

  it('keep a step of two right angles between straights', () => {
    expect(
      corners([
        [0, 0],
        [10, 0],
        [10, 4],
        [20, 4],
      ]).map(({ u }) => u),
    ).toEqual([10, 14]);
  });

  it('do not stand on a wriggly border', () => {
    const border = Array.from({ length: 40 }, (_, i): Point => [i * 0.8, i % 2 ? 0.3 : 0]);
    expect(corners(border)).toEqual([]);
  });
});
