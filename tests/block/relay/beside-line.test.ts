import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { baseOf, lineBeside } from '../../../src/block/relay/beside-line.js';
import type { Point } from '../../../src/geometry/point.js';

/** Needle points every 2.5 mm on a straight line from (x, y), rounded to machine steps. */
const straight = (x: number, y: number, angle: number, length = 60): Point[] =>
  Array.from({ length: Math.floor(length / 2.5) + 1 }, (_, i): Point => {
    const along = 2.5 * i;
    return [x + along * Math.cos(angle), y + along * Math.sin(angle)].map(
      (value) => Math.round(10 * value) / 10,
    ) as unknown as Point;
  });
const arc = (radius: number): Point[] =>
  Array.from({ length: 40 }, (_, i): Point => [radius * Math.cos(i / 20), radius * Math.sin(i / 20)]);
const angles = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

describe('a line of stitches belongs to the line that it follows at a constant distance', () => {
  test('on either side of it, up to an inch away, whichever way it runs', () => {
    fc.assert(
      fc.property(angles, fc.double({ min: -25, max: 25, noNaN: true }), fc.boolean(), (angle, by, back) => {
        const base = baseOf(straight(10, 20, angle));
        const line = straight(10 + by * Math.sin(angle), 20 - by * Math.cos(angle), angle);
        expect(lineBeside(back ? line.reverse() : line, [base])).toBe(base);
      }),
    );
    const base = baseOf(arc(60));
    expect(lineBeside(arc(53.65), [base])).toBe(base);
    expect(lineBeside(arc(66.35), [base])).toBe(base);
  });

  test('and to none further off, across it, at an angle to it, or too short to tell', () => {
    const base = baseOf(straight(0, 0, 0));
    expect(lineBeside(straight(0, 30, 0), [base])).toBeNull();
    expect(lineBeside(straight(30, -30, Math.PI / 2), [base])).toBeNull();
    expect(lineBeside(straight(0, 5, 0.05), [base])).toBeNull();
    expect(lineBeside(straight(0, 5, 0, 8), [base])).toBeNull();
  });

  test('past the ends of which it may run on by a seam allowance, and no further', () => {
    const base = baseOf(straight(0, 0, 0));
    expect(lineBeside(straight(-5, 0, 0, 70), [base])).toBe(base);
    expect(lineBeside(straight(-30, 0, 0, 120), [base])).toBeNull();
  });

  test('the nearer one of two', () => {
    const [near, far] = [baseOf(straight(0, 3, 0)), baseOf(straight(0, -8, 0))];
    for (const bases of [
      [near, far],
      [far, near],
    ]) {
      expect(lineBeside(straight(0, 0, 0), bases)).toBe(near);
    }
  });
});
