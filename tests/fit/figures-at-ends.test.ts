import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evenBand } from '../../src/fit/band.js';
import type { Chain } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { placeUnits } from '../../src/fit/place.js';
import { seatsAlong } from '../../src/fit/seats.js';
import { sized } from '../../src/fit/sized.js';
import type { Placing } from '../../src/fit/unit-places.js';
import { guideFromLine } from '../../src/geometry/guide-from-line.js';
import { stitchNamed } from '../stitches/dictionary.js';
import { askFor, chainsOf } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

/** Stitches whose figures keep their shape and stand apart from each other, with a seat at the tip of one. */
const FIGURES = [
  ['lazy-daisy', 'tip'],
  ['lazy-daisy-clusters', 'tip'],
  ['detached-wheatear', 'left tip'],
  ['star-stitch', 'tip'],
] as const;
const LEAST = 0.55;
const COUNT = 12;

/** A row along +x, from 0 on. */
function rowOf(name: string): Placing {
  const { build, glide, repeat } = sized(stitchNamed(name), {});
  const unit = build(1, repeat);
  const count = glide ? 2 * COUNT : COUNT;
  const guide = guideFromLine(Float64Array.of(0, 0, count * unit.length, 0), [], false);
  const { left, right } = unit.reach;
  const reach = { left: Math.max(left, right), right: Math.max(left, right) };
  const none = { start: null, end: null, startPoint: null, endPoint: null };
  const parts = [{ ...none, from: 0, to: guide.length, first: 0, last: guide.u.length - 1 }];
  return {
    laying: { guide, parts, band: evenBand(guide, reach), built: reach, closed: false, offset: 0 },
    runs: [{ unit, count, from: 0, length: unit.length }],
    closed: false,
    hand: 1,
    alternate: glide,
    passes: 3,
    beside: 0,
  };
}

type IsOn = (x: number, y: number) => boolean;

/** The cloth before a straight edge that crosses the row's line at `at`, leaning by `lean` from square. */
const beforeEdge =
  (at: number, lean: number): IsOn =>
  (x, y) =>
    (x - at) * Math.cos(lean) + y * Math.sin(lean) <= 1e-9;

/** Of every unit, the points of what is seen of it: x y x y ... */
function figures({ units, kind, unit, path, pathStart }: Chain): number[][] {
  const points = Array.from({ length: units }, (): number[] => []);
  kind.forEach((one, leg) => {
    if (one !== 'under') points[unit[leg]].push(...path.slice(2 * pathStart[leg], 2 * pathStart[leg + 1]));
  });
  return points;
}

const isWhole = (points: readonly number[], isOn: IsOn) =>
  points.every((x, i) => i % 2 === 1 || isOn(x, points[i + 1]));

/** Greatest extent of some points, to either axis. */
const extent = (points: readonly number[]) => {
  const along = (axis: number) => {
    const values = points.filter((_, i) => i % 2 === axis);
    return Math.max(...values) - Math.min(...values);
  };
  return Math.max(along(0), along(1));
};

/** A figure, drawn at a share of its size about where it stands on the line. */
const drawnAt = (points: readonly number[], x: number, share: number) =>
  points.map((value, i) => (i % 2 ? share * value : x + share * (value - x)));

const edges = fc.record({
  figure: fc.constantFrom(...FIGURES),
  lean: fc.double({ min: -1, max: 1, noNaN: true }),
  /** where the edge crosses the row, in its last repeats */
  back: fc.double({ min: 0, max: 1, noNaN: true }),
});

function laidTo({
  figure: [name, seat],
  lean,
  back,
}: {
  figure: readonly [string, string];
  lean: number;
  back: number;
}) {
  const row = rowOf(name);
  const [{ unit, count }] = row.runs;
  const isOn = beforeEdge((count - back) * unit.length, lean);
  const whole = figures(placeUnits(row));
  const cut: Placing = { ...row, cloth: { allowed: isOn, broadly: null } };
  const laid = placeUnits(cut);
  const own = figures(laid);
  const shares = own.map((points, i) => extent(points) / extent(whole[i]));
  return { isOn, whole, own, shares, laid, cut, seat, stand: (i: number) => (i + 0.5) * unit.length };
}

// Common practice: the last flower before a slanting edge is made smaller, not left out.
test('before a slanting edge a figure is drawn smaller where it then lies on the cloth, and is as large as it may be', () => {
  let smaller = 0;
  fc.assert(
    fc.property(edges, (edge) => {
      const { isOn, whole, own, shares, stand } = laidTo(edge);
      whole.forEach((points, i) => {
        const fits = (share: number) => isWhole(drawnAt(points, stand(i), share), isOn);
        if (fits(1) || !fits(LEAST)) {
          expect(shares[i]).toBeCloseTo(1, 9);
          return;
        }
        smaller++;
        expect(isWhole(own[i], isOn)).toBe(true);
        expect(fits(Math.min(1, shares[i] + 0.02))).toBe(false);
      });
    }),
    { numRuns: 200 },
  );
  expect(smaller).toBeGreaterThan(50);
});

test('none is drawn smaller than to the least share, and some nearly as small', () => {
  let least = 1;
  fc.assert(
    fc.property(edges, (edge) => {
      const { shares } = laidTo(edge);
      least = Math.min(least, ...shares);
      expect(Math.max(...shares)).toBeLessThan(1 + 1e-9);
    }),
    { numRuns: 200 },
  );
  expect(least).toBeGreaterThan(LEAST - 1e-9);
  expect(least).toBeLessThan(LEAST + 0.1);
});

test('figures away from the edge lie as in a row that is not cut', () => {
  let smaller = 0;
  fc.assert(
    fc.property(edges, (edge) => {
      const { whole, own, shares } = laidTo(edge);
      const first = shares.findIndex((share) => share < 1 - 1e-9);
      if (first >= 0) smaller++;
      const away = first < 0 ? own.length : first;
      expect(away).toBeGreaterThan(COUNT / 2);
      const [before, as] = [own, whole].map((all) => all.slice(0, away).flat());
      expect(Math.max(...before.map((value, k) => Math.abs(value - as[k])))).toBeLessThan(1e-9);
    }),
  );
  expect(smaller).toBeGreaterThan(20);
});

test('what sits at the tip of a smaller figure comes along', () => {
  let smaller = 0;
  fc.assert(
    fc.property(edges, (edge) => {
      const { laid, cut, seat, shares } = laidTo(edge);
      if (Math.min(...shares) < 1 - 1e-9) smaller++;
      const spots = seatsAlong(cut, seat);
      expect(spots.length).toBeGreaterThan(0);
      for (const { x, y } of spots) {
        const away = Math.min(
          ...Array.from({ length: laid.nodes.length / 2 }, (_, i) =>
            Math.hypot(laid.nodes[2 * i] - x, laid.nodes[2 * i + 1] - y),
          ),
        );
        expect(away).toBeLessThan(1e-6);
      }
    }),
  );
  expect(smaller).toBeGreaterThan(20);
});

test('a row of sprigs from edge to edge of a block that is trimmed keeps all its petals, square or slanting', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: Math.PI / 2, noNaN: true }),
      fc.double({ min: 10, max: 12, noNaN: true }),
      (theta, repeat) => {
        const half = 100 / Math.tan(theta);
        const map = mapOfLines([
          [
            [0, 0],
            [200, 0],
            [200, 200],
            [0, 200],
            [0, 0],
          ],
          [
            [100 - half, 0],
            [100 + half, 200],
          ],
        ]);
        const asks = [askFor(1, 'lazy-daisy', { sizes: { repeat } })];
        const [{ fit }] = fitLines(map, asks, { gap: 0.6, outline: 'trim' });
        const [{ unit, kind, units }] = chainsOf(fit);
        const halves = new Int32Array(units);
        kind.forEach((one, leg) => {
          if (one === 'loop') halves[unit[leg]]++;
        });
        expect(units).toBeGreaterThan(30);
        expect([...halves].filter((count) => count < 6)).toEqual([]);
      },
    ),
    { numRuns: 40 },
  );
});
