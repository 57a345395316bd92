import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besideLine } from '../../src/geometry/beside-line.js';
import { fromPoints, type Points, reversed, toPoints } from '../../src/geometry/polyline.js';

const rounded = (line: Points) => toPoints(line).map(([x, y]) => [+x.toFixed(6), +y.toFixed(6)]);

/** From a point to a line, segment by segment. */
function away([px, py]: readonly number[], line: Points): number {
  const points = toPoints(line);
  return Math.min(
    ...points.slice(1).map(([bx, by], i) => {
      const [ax, ay] = points[i];
      const [dx, dy] = [bx - ax, by - ay];
      const t = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(px - ax - t * dx, py - ay - t * dy);
    }),
  );
}

/** Long legs that turn by up to 100 degrees where they meet. */
const zigzags = fc
  .array(fc.tuple(fc.integer({ min: 10, max: 30 }), fc.integer({ min: -100, max: 100 })), {
    minLength: 1,
    maxLength: 5,
  })
  .map((legs) => {
    let [x, y, way] = [0, 0, 0];
    const points: [number, number][] = [[0, 0]];
    for (const [long, turn] of legs) {
      way += (turn * Math.PI) / 180;
      x += long * Math.cos(way);
      y += long * Math.sin(way);
      points.push([x, y]);
    }
    return fromPoints(points);
  });

describe('a line beside another', () => {
  it('lies to the left as drawn, y down, and to the right where it is negative', () => {
    const east = Float64Array.of(0, 0, 10, 0);
    expect(rounded(besideLine(east, 2))).toEqual([
      [0, -2],
      [10, -2],
    ]);
    expect(rounded(besideLine(east, -2))).toEqual([
      [0, 2],
      [10, 2],
    ]);
  });

  it('is cut short inside a corner, to where both sides meet, also where points lie close to the corner', () => {
    const line = Float64Array.of(0, 0, 9, 0, 10, 0, 10, 1, 10, 10);
    expect(rounded(besideLine(line, -2))).toEqual([
      [0, 2],
      [8, 2],
      [8, 10],
    ]);
    expect(rounded(besideLine(line, 2))).toEqual([
      [0, -2],
      [9, -2],
      [12, -2],
      [12, 1],
      [12, 10],
    ]);
  });

  it('of a circle is a circle larger or smaller by as much', () => {
    const points = Array.from({ length: 721 }, (_, i) => (i * Math.PI) / 360);
    const circle = fromPoints(points.map((a) => [10 * Math.cos(a), 10 * Math.sin(a)]));
    const radii = (aside: number) =>
      rounded(besideLine(circle, aside)).map(([x, y]) => Math.hypot(x, y).toFixed(3));
    expect(new Set(radii(3))).toEqual(new Set(['13.000']));
    expect(new Set(radii(-3))).toEqual(new Set(['7.000']));
  });

  it('is nowhere nearer than it is to lie, and the same walked either way', () => {
    fc.assert(
      fc.property(zigzags, fc.constantFrom(-1.5, 1.5, 3.5), (line, aside) => {
        const beside = besideLine(line, aside);
        expect(rounded(reversed(besideLine(reversed(line), -aside)))).toEqual(rounded(beside));
        // legs that come back near others are another matter: each point is held to the legs next to it
        const nearest = Math.min(...toPoints(beside).map((point, i) => away(point, legsAt(line, i))));
        expect(nearest).toBeCloseTo(Math.abs(aside), 6);
      }),
    );
  });
});

const legsAt = (line: Points, i: number): Points =>
  line.slice(2 * Math.max(0, i - 1), 2 * Math.min(line.length / 2, i + 2));
