import fc from 'fast-check';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import { describe, expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import type { KeptArea } from '../../src/formats/line-drawing.js';
import { roundDisc } from '../../src/geometry/disc.js';
import { fromPoints } from '../../src/geometry/polyline.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';
import { anyLine } from './lines-to-dress.js';

type XY = readonly [number, number];

const GAP = 0.6;
const rules = { gap: GAP, outline: 'free' } as const;
const kept = (points: readonly XY[], name = 'monogram'): KeptArea => ({
  name,
  area: { rings: [fromPoints([...points, points[0]])], rule: 'nonzero' },
});
const disc = (at: XY, radius: number): KeptArea => ({
  name: 'monogram',
  area: { rings: [roundDisc(at, radius)], rule: 'nonzero' },
});

/** JTS (jsts): DistanceOp, the least distance between a polygon and points; 0 inside. */
const factory = new GeometryFactory();
function clearOf({ area }: KeptArea, points: readonly XY[]): number {
  const ring = area.rings[0];
  const corners = Array.from(
    { length: ring.length / 2 },
    (_, i) => new Coordinate(ring[2 * i], ring[2 * i + 1]),
  );
  const polygon = factory.createPolygon(factory.createLinearRing(corners), []);
  const all = factory.createMultiPointFromCoords(points.map(([x, y]) => new Coordinate(x, y)));
  return points.length > 0 ? DistanceOp.distance(polygon, all) : Infinity;
}

/** A straight seam from (0, 100) to (200, 100) in a bare block. */
const seam = mapOfLines([
  [
    [0, 100],
    [200, 100],
  ],
]);
const dressed = (stitch: string, ...keepClear: KeptArea[]) =>
  fitLines(seam, [askFor(1, stitch, { keepClear, sizes: { width: 12 } })], rules)[0];
const pointsOf = (stitch: string, ...keepClear: KeptArea[]) =>
  legPoints(chainsOf(dressed(stitch, ...keepClear).fit));
const level = (x0: number, x1: number, y: number): KeptArea =>
  kept([
    [x0, y],
    [x1, y],
    [x1, y - 30],
    [x0, y - 30],
  ]);

describe('a treatment beside what is kept clear', () => {
  test('gives way on that side and only there: hand-computed', () => {
    // 12 mm wide, 6 to each side; the area's edge is 5 mm above the seam, from 80 to 120
    const points = pointsOf('herringbone', level(80, 120, 95));
    const above = (x0: number, x1: number) =>
      100 - Math.min(...points.filter(([x]) => x >= x0 && x <= x1).map(([, y]) => y));
    const below = Math.max(...points.map(([, y]) => y)) - 100;
    expect(below).toBeCloseTo(6, 1);
    expect(above(85, 115)).toBeLessThanOrEqual(5 - GAP);
    expect(above(85, 115)).toBeGreaterThan(5 - GAP - 0.5);
    // reach changes by 1 in 4 at most: 2 mm less are made up for within 8 mm and a leg's length
    expect(above(0, 60)).toBeCloseTo(6, 1);
    expect(above(140, 200)).toBeCloseTo(6, 1);
  });

  test('breaks off where the line itself is covered, and goes on behind it at full width', () => {
    const { fit, findings } = dressed('feather', disc([100, 100], 10));
    const points = legPoints(chainsOf(fit));
    const inside = points.filter(([x]) => x > 90 - GAP && x < 110 + GAP);
    expect(inside).toEqual([]);
    const nearest = Math.min(...points.map(([x, y]) => Math.hypot(x - 100, y - 100)));
    expect(nearest).toBeGreaterThanOrEqual(10 + GAP);
    expect(nearest).toBeLessThan(10 + GAP + 3);
    expect(fit.scale).toBe(1);
    expect(fit.stretches).toHaveLength(2);
    expect(findings).toEqual([
      expect.objectContaining({
        code: 'kept-clear',
        level: 'note',
        seam: 1,
        message: expect.stringContaining('monogram'),
      }),
    ]);
  });

  test('breaks off where less than half its width would be left at its least size, and keeps its size elsewhere', () => {
    const { fit, findings } = dressed('herringbone', level(80, 120, 99));
    expect(fit.stretches).toHaveLength(2);
    expect(fit.scale).toBeGreaterThan(0.9);
    expect(findings.map(({ code }) => code)).toContain('kept-clear');
    const points = legPoints(chainsOf(fit));
    expect(points.filter(([x]) => x > 80 && x < 120)).toEqual([]);
  });

  test('leaves no stub before the end of its line that is too short for a repeat', () => {
    const { fit, findings } = dressed('herringbone', disc([14, 100], 10));
    expect(fit.stretches).toHaveLength(1);
    expect(findings.map(({ code }) => code)).toEqual(['kept-clear']);
  });

  test('names both areas where no repeat fits between them', () => {
    const areas = [disc([70, 100], 6), { ...disc([86, 100], 6), name: 'charm' }];
    const { findings } = dressed('feather', ...areas);
    expect(findings.map(({ message }) => message.split(' mm bare ')[1])).toEqual([
      'to keep monogram and charm clear',
    ]);
  });

  test('is laid as ever when nothing is near', () => {
    const far = fitLines(seam, [askFor(1, 'feather', { keepClear: [disc([100, 150], 20)] })], rules);
    const none = fitLines(seam, [askFor(1, 'feather')], rules);
    expect(far[0].fit).toEqual(none[0].fit);
  });

  test('stays clear of it by the gap, whatever the line, the stitch and the area', () => {
    const stitches = [
      'feather',
      'herringbone',
      'cretan',
      'fly',
      'blanket',
      'chevron',
      'chain',
      'running',
      'lazy-daisy',
    ];
    const corners = fc.array(
      fc.tuple(fc.double({ min: 0.5, max: 18, noNaN: true }), fc.double({ min: 0.2, max: 1, noNaN: true })),
      { minLength: 3, maxLength: 7 },
    );
    const misses: unknown[] = [];
    fc.assert(
      fc.property(
        anyLine,
        fc.constantFrom(...stitches),
        corners,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: -14, max: 14, noNaN: true }),
        fc.double({ min: -14, max: 14, noNaN: true }),
        ({ points, kind }, stitch, shape, along, dx, dy) => {
          const i = Math.min(points.length - 2, Math.floor(along * (points.length - 1)));
          const t = along * (points.length - 1) - i;
          const [x, y] = [0, 1].map((k) => points[i][k] + t * (points[i + 1][k] - points[i][k]));
          const whole = shape.reduce((sum, [, share]) => sum + share, 0);
          let turned = 0;
          const ring = shape.map(([radius, share]): XY => {
            turned += (2 * Math.PI * share) / whole;
            return [x + dx + radius * Math.cos(turned), y + dy + radius * Math.sin(turned)];
          });
          const area = kept(ring);
          const map = mapOfLines([points]);
          const [{ fit }] = fitLines(
            map,
            [askFor(map.seams.length ? 1 : 'outline', stitch, { keepClear: [area] })],
            rules,
          );
          const clear = clearOf(area, legPoints(chainsOf(fit)));
          if (clear < GAP) misses.push({ kind, stitch, clear });
        },
      ),
      { numRuns: 400 },
    );
    expect(misses).toEqual([]);
  });
});
