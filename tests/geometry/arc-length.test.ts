import fc from 'fast-check';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, it } from 'vitest';
import { flattenSubpath } from '../../src/formats/svg-flatten.js';
import { readPathData } from '../../src/formats/svg-path.js';
import { arcLength, type Curve, parametersAt, pointsAt } from '../../src/geometry/arc-length.js';
import { bezierBreaks, bezierCurve } from '../../src/geometry/cubic.js';
import { flattenCurve } from '../../src/geometry/flatten.js';
import type { Point } from '../../src/geometry/point.js';
import { fromPoints, polylineLength } from '../../src/geometry/polyline.js';

const { cos, sin, exp, sqrt, PI } = Math;

/** Lengths in closed form: Bronshtein and Semendyayev, Handbook of Mathematics, plane curves; from memory. */
const handbook: { name: string; curve: Curve; length: number }[] = [
  {
    name: 'circle of radius 7: 2 pi r',
    curve: {
      from: 0,
      to: 2 * PI,
      at: (t) => [7 * cos(t), 7 * sin(t)],
      velocity: (t) => [-7 * sin(t), 7 * cos(t)],
    },
    length: 14 * PI,
  },
  {
    name: 'parabola y = x^2 from 0 to 3: x sqrt(1 + 4 x^2) / 2 + asinh(2 x) / 4',
    curve: { from: 0, to: 3, at: (t) => [t, t * t], velocity: (t) => [1, 2 * t] },
    length: (3 * sqrt(37)) / 2 + Math.asinh(6) / 4,
  },
  {
    name: 'two arches of a cycloid: 8 a each',
    curve: {
      from: 0,
      to: 4 * PI,
      at: (t) => [5 * (t - sin(t)), 5 * (1 - cos(t))],
      velocity: (t) => [5 * (1 - cos(t)), 5 * sin(t)],
    },
    length: 80,
  },
  {
    name: 'astroid: 6 a',
    curve: {
      from: 0,
      to: 2 * PI,
      at: (t) => [4 * cos(t) ** 3, 4 * sin(t) ** 3],
      velocity: (t) => [-12 * cos(t) ** 2 * sin(t), 12 * sin(t) ** 2 * cos(t)],
    },
    length: 24,
  },
  {
    name: 'logarithmic spiral r = a e^(k phi): sqrt(1 + k^2) / k (r2 - r1)',
    curve: {
      from: 0,
      to: 9,
      at: (t) => [exp(0.3 * t) * cos(t), exp(0.3 * t) * sin(t)],
      velocity: (t) => [exp(0.3 * t) * (0.3 * cos(t) - sin(t)), exp(0.3 * t) * (0.3 * sin(t) + cos(t))],
    },
    length: (sqrt(1.09) / 0.3) * (exp(2.7) - 1),
  },
];

describe('the length of a curve', () => {
  it.each(handbook)('agrees with the closed form: $name', ({ curve, length }) => {
    expect(Math.abs(arcLength(curve) / length - 1)).toBeLessThan(1e-8);
  });

  it('is right on a cusp, where fixed quadrature is off by 0.1 %', () => {
    // velocity 3 ((1 - 2t)^2, 1 - 2t): with w = 1 - 2t the length is the integral of 3 w sqrt(w^2 + 1) from 0 to 1
    const cusp = bezierCurve([
      [0, 0],
      [1, 1],
      [0, 1],
      [1, 0],
    ]);
    expect(arcLength(cusp)).toBeCloseTo(2 ** 1.5 - 1, 8);
  });

  it('is right on a curve that doubles back along itself', () => {
    // x' = 6 (1 - 5t + 5t^2) vanishes at t = 1/2 -+ 1/sqrt(20); the line is walked there, back, and on
    const x = (t: number) => 6 * t - 15 * t ** 2 + 10 * t ** 3;
    const [t1, t2] = [0.5 - 1 / sqrt(20), 0.5 + 1 / sqrt(20)];
    const length = x(t1) + (x(t1) - x(t2)) + (1 - x(t2));
    expect(
      arcLength(
        bezierCurve([
          [0, 0],
          [2, 0],
          [-1, 0],
          [1, 0],
        ]),
      ),
    ).toBeCloseTo(length, 8);
  });

  const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
  const point = fc.tuple(coordinate, coordinate);
  it('is the sum of its parts, wherever it is cut', () => {
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 4, maxLength: 4 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (control, t) => {
          const curve = bezierCurve(control);
          const whole = arcLength(curve);
          expect(Math.abs(arcLength(curve, 0, t) + arcLength(curve, t, 1) - whole)).toBeLessThan(
            1e-7 * whole + 1e-9,
          );
        },
      ),
    );
  });

  it('is never shorter than the chord nor longer than the control polygon', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 4, maxLength: 4 }), (control) => {
        const length = arcLength(bezierCurve(control));
        const polygon = polylineLength(fromPoints(control));
        const chord = Math.hypot(control[3][0] - control[0][0], control[3][1] - control[0][1]);
        // squares of lengths under 1e-160 mm vanish
        expect(length).toBeGreaterThanOrEqual(chord * (1 - 1e-8) - 1e-150);
        expect(length).toBeLessThanOrEqual(polygon * (1 + 1e-8) + 1e-150);
      }),
    );
  });
});

describe('points at a length', () => {
  it.each(handbook)('lie where the length up to them is the one asked for: $name', ({ curve, length }) => {
    const wanted = [0, 0.1, 0.25, 0.5, 0.77, 1].map((share) => share * length);
    const found = parametersAt(curve, wanted).map((t) => arcLength(curve, curve.from, t));
    found.forEach((at, i) => void expect(Math.abs(at - wanted[i])).toBeLessThan(1e-6 * length));
  });

  it('divide a circle evenly', () => {
    const quarter = pointsAt(handbook[0].curve, [3.5 * PI])[0];
    expect(quarter[0]).toBeCloseTo(0, 7);
    expect(quarter[1]).toBeCloseTo(7, 7);
  });
});

describe('a flattened curve', () => {
  it('keeps the length to 0.001 %, also on cusps and where a curve doubles back', () => {
    const sharp: Point[][] = [
      [
        [0, 0],
        [100, 100],
        [0, 100],
        [100, 0],
      ],
      [
        [0, 0],
        [200, 0],
        [-100, 0],
        [100, 0],
      ],
      [
        [0, 0],
        [60, 0],
        [60, 0.01],
        [0, 0.02],
      ],
      [
        [0, 0],
        [0, 0],
        [40, 80],
        [90, 10],
      ],
    ];
    for (const control of sharp) {
      const curve = bezierCurve(control);
      const flat = polylineLength(fromPoints(flattenCurve(curve, bezierBreaks(control))));
      expect(Math.abs(flat / arcLength(curve) - 1)).toBeLessThan(1e-5);
    }
  });

  // Length on the same path data by svg-path-properties, an independent library (bounded Gauss quadrature).
  it.each([
    'M10 10 C 40 80, 90 -20, 120 60 S 10 90 30 40',
    'M0 0 Q 30 60 60 0 T 120 0 T 180 20',
    'm5 5 c 10 20 30 20 40 0 s 30 -20 40 0 l 10 10 h 20 v -15 z',
    'M10 80 A 45 45 0 0 0 100 80 A 30 50 30 1 1 60 20',
    'M0 0 a 25 10 -20 0 1 50 -25 a 5 5 0 1 0 3 9',
  ])('is as long as another library says: %s', (data) => {
    const ours = readPathData(data, 'test')
      .map((subpath) => polylineLength(flattenSubpath(subpath)!.points))
      .reduce((sum, length) => sum + length, 0);
    expect(Math.abs(ours / new svgPathProperties(data).getTotalLength() - 1)).toBeLessThan(1e-4);
  });
});
