import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frameFinder, reversedGuide } from '../../src/geometry/guide-frame.js';
import { guideFromLine } from '../../src/geometry/guide-from-line.js';
import { fromPoints, polylineLength, reversed } from '../../src/geometry/polyline.js';
import { ringFrom } from '../../src/geometry/ring.js';
import { FAIRING, FLATTEN_TURN } from '../../src/geometry/tolerances.js';

const arc = (radius: number, sweep: number) => {
  const n = Math.ceil(Math.abs(sweep) / FLATTEN_TURN);
  return fromPoints(
    Array.from({ length: n + 1 }, (_, i) => {
      const t = (sweep * i) / n;
      return [radius * Math.sin(Math.abs(t)), Math.sign(sweep) * radius * (1 - Math.cos(t))] as const;
    }),
  );
};

const wander = fc
  .array(
    fc.tuple(fc.double({ min: 0.4, max: 6, noNaN: true }), fc.double({ min: -0.5, max: 0.5, noNaN: true })),
    {
      minLength: 2,
      maxLength: 30,
    },
  )
  .map((steps) => {
    let [x, y, heading] = [0, 0, 0];
    const points: [number, number][] = [[0, 0]];
    for (const [length, turn] of steps) {
      heading += turn;
      x += length * Math.cos(heading);
      y += length * Math.sin(heading);
      points.push([x, y]);
    }
    return fromPoints(points);
  });

describe('the line a stitch follows', () => {
  test('bends as its circle does, also where other lines meet it between two of its points', () => {
    const circle = arc(30, 1.5);
    fc.assert(
      fc.property(
        fc.nat(circle.length / 2 - 2),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (k, share) => {
          const [x, y] = [0, 1].map(
            (i) => circle[2 * k + i] + share * (circle[2 * k + 2 + i] - circle[2 * k + i]),
          );
          const met = [...circle.slice(0, 2 * k + 2), x, y, ...circle.slice(2 * k + 2)];
          const { u, theta } = guideFromLine(Float64Array.from(met), [], false);
          const bends = Array.from(u, (_, i) =>
            i > 0 ? (theta[i] - theta[i - 1]) / (u[i] - u[i - 1] || 1) : 0,
          );
          expect(Math.max(...bends.map(Math.abs))).toBeLessThan(1.01 / 30);
        },
      ),
    );
  });

  test('on a circle: length and direction are those of the circle (L = r phi, closed form)', () => {
    for (const radius of [3, 10, 80]) {
      const guide = guideFromLine(arc(radius, 2), [], false);
      expect(Math.abs(guide.length / (2 * radius) - 1)).toBeLessThan(1e-4);
      const finder = frameFinder(guide, 0, guide.u.length - 1);
      finder.at(guide.length / 2);
      expect(finder.frame[2]).toBeCloseTo(1, 3);
      expect(finder.frame[0]).toBeCloseTo(radius * Math.sin(1), 2);
    }
  });

  test('directions do not jump except at a corner, where the line has two', () => {
    fc.assert(
      fc.property(wander, (line) => {
        const guide = guideFromLine(line, [], false);
        for (let i = 1; i < guide.theta.length; i++) {
          expect(Math.abs(guide.theta[i] - guide.theta[i - 1])).toBeLessThanOrEqual(
            (2 * Math.PI) / 180 + 1e-9,
          );
        }
      }),
    );
    const bent = fromPoints([
      [0, 0],
      [20, 0],
      [20, 20],
    ]);
    const guide = guideFromLine(bent, [{ u: 20, turn: -Math.PI / 2 }], false);
    expect(guide.corners).toHaveLength(1);
    expect(guide.corners[0].turn).toBeCloseTo(-Math.PI / 2, 12);
    expect([...guide.u]).toEqual([0, 20, 20, 40]);
  });

  test('easing moves a line by no more than one machine step', () => {
    fc.assert(
      fc.property(wander, (line) => {
        const guide = guideFromLine(line, [], false);
        for (let i = 0; i < guide.x.length; i++) {
          let least = Infinity;
          for (let k = 0; k + 3 < line.length; k += 2) {
            const [dx, dy] = [line[k + 2] - line[k], line[k + 3] - line[k + 1]];
            const [px, py] = [guide.x[i] - line[k], guide.y[i] - line[k + 1]];
            const t = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
            least = Math.min(least, Math.hypot(px - t * dx, py - t * dy));
          }
          expect(least).toBeLessThanOrEqual(FAIRING + 1e-9);
        }
      }),
    );
  });

  test('walked the other way it is the same line: places mirror, directions turn about', () => {
    fc.assert(
      fc.property(wander, fc.double({ min: 0, max: 1, noNaN: true }), (line, share) => {
        const there = guideFromLine(line, [], false);
        const back = guideFromLine(reversed(line), [], false);
        const turned = reversedGuide(there);
        expect(back.length).toBeCloseTo(there.length, 4);
        const a = frameFinder(back, 0, back.u.length - 1);
        const b = frameFinder(turned, 0, turned.u.length - 1);
        a.at(share * back.length);
        b.at(share * back.length);
        expect(Math.hypot(a.frame[0] - b.frame[0], a.frame[1] - b.frame[1])).toBeLessThan(1e-3);
      }),
    );
  });

  test('a ring is one smooth line across its start', () => {
    const guide = guideFromLine(arc(12, 2 * Math.PI), [], true);
    const last = guide.u.length - 1;
    expect(guide.x[0]).toBeCloseTo(guide.x[last], 9);
    expect(guide.y[0]).toBeCloseTo(guide.y[last], 9);
    expect(Math.abs(guide.theta[last] - guide.theta[0])).toBeCloseTo(2 * Math.PI, 6);
    expect(guide.length).toBeCloseTo(2 * Math.PI * 12, 2);
  });

  test('a ring started elsewhere keeps its length, its points and its corners', () => {
    const square = fromPoints([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
      [0, 0],
    ]);
    const corners = [0, 10, 20, 30].map((u) => ({ u, turn: -Math.PI / 2 }));
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (start) => {
        const moved = ringFrom(square, corners, start);
        expect(polylineLength(moved.points)).toBeCloseTo(40, 6);
        expect(moved.corners).toHaveLength(4);
        const guide = guideFromLine(moved.points, moved.corners, true);
        expect(guide.length).toBeCloseTo(40, 6);
        expect(guide.corners).toHaveLength(4);
        const n = moved.points.length;
        expect(
          Math.hypot(moved.points[0] - moved.points[n - 2], moved.points[1] - moved.points[n - 1]),
        ).toBeLessThan(1e-6);
      }),
    );
  });
});
