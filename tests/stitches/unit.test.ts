import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/input-error.js';
import type { Stitch, Unit } from '../../src/stitches/stitch.js';
import { dictionary, endsOf, nodeAt, stitchNamed } from './dictionary.js';
import { layRow } from './lay-row.js';

/** Values over everything a build takes: repeats also as short and as long as a fit makes them. */
const anyValues = ({ parameters }: Stitch) =>
  fc.record(
    Object.fromEntries(
      parameters.map(({ name, unit, min, max }) => {
        if (unit === 'count') return [name, fc.integer({ min, max })];
        const [least, most] = name === 'repeat' ? [min * 0.8, max * 1.25] : [min, max];
        return [name, fc.double({ min: least, max: most, noNaN: true, noDefaultInfinity: true })];
      }),
    ),
  ) as fc.Arbitrary<Record<string, number>>;

const always = (stitch: Stitch, holds: (unit: Unit, values: Record<string, number>) => void) =>
  fc.assert(
    fc.property(anyValues(stitch), (values) => holds(stitch.build(values), values)),
    { numRuns: 80 },
  );

/** Three passes of No. 40, 0.22 mm from one to the next, are 0.84 mm wide. */
const HALF_A_THREAD = 0.42;

describe.each(dictionary.map((stitch) => ({ name: stitch.name, stitch })))(
  'every unit of $name',
  ({ stitch }) => {
    const glide = stitch.symmetry === 'glide';

    test('has finite holes and paths that run from hole to hole', () => {
      always(stitch, (unit, { repeat }) => {
        expect(unit.length).toBeCloseTo(glide ? repeat / 2 : repeat, 12);
        for (const value of unit.nodes) expect(Number.isFinite(value)).toBe(true);
        for (const leg of unit.legs) {
          for (const value of leg.path) expect(Number.isFinite(value)).toBe(true);
          expect(endsOf(leg)).toEqual([nodeAt(unit, leg.from), nodeAt(unit, leg.to)]);
        }
      });
    });

    test('stays inside its declared reach and overhang, and touches each of them', () => {
      always(stitch, (unit) => {
        const count = 3;
        // Satin and knots are as wide as they are, whatever their middle line does.
        const row = layRow(unit, false, count).flatMap(({ xy, size }) =>
          xy.flatMap(([u, v]) => [
            [u - size / 2, v - size / 2],
            [u + size / 2, v + size / 2],
          ]),
        );
        const u = row.map(([along]) => along);
        const v = row.map(([, across]) => across);
        expect(Math.max(0, ...v)).toBeCloseTo(unit.reach.left, 9);
        expect(Math.max(0, ...v.map((across) => -across))).toBeCloseTo(unit.reach.right, 9);
        expect(Math.max(0, ...u.map((along) => -along))).toBeCloseTo(unit.overhang.start, 9);
        expect(Math.max(0, ...u) - count * unit.length).toBeCloseTo(unit.overhang.end, 9);
      });
    });

    test('is as wide as its width says', () => {
      always(stitch, (unit, { width }) => {
        const { left, right } = unit.reach;
        // A stitch that lies to one hand (blanket) is as wide as its arms are long. Bellies of curves are sampled, and
        // not at their very top.
        const wide = !glide && left > 3 * right ? left : 2 * Math.max(left, right);
        expect(wide / width).toBeLessThan(1.03);
        // A half-wheel stays a wheel, whatever height is asked; of an even number of rays none stands upright.
        const least = { 'half-wheels': 0.3, 'straight-fans': 0.9 }[stitch.name] ?? 0.95;
        expect(wide / width).toBeGreaterThan(least);
      });
    });

    test('joins the next unit in the same holes', () => {
      always(stitch, (unit) => {
        expect(unit.joins.length).toBeGreaterThan(0);
        for (const [here, next] of unit.joins) {
          const [u, v] = nodeAt(unit, here);
          const [nextU, nextV] = nodeAt(unit, next);
          expect(u).toBeCloseTo(nextU + unit.length, 9);
          expect(v).toBeCloseTo(glide ? -nextV : nextV, 9);
        }
      });
    });

    test.skipIf(stitch.detached)('hangs together in a row, so that the needle needs no jump', () => {
      always(stitch, (unit) => {
        stitch.threads.forEach((_, thread) => {
          const legs = layRow(unit, glide, 5).filter((leg) => leg.thread === thread);
          const reached = new Set([legs[0].from]);
          for (let grown = true; grown; ) {
            grown = false;
            for (const { from, to } of legs) {
              if (reached.has(from) === reached.has(to)) continue;
              reached.add(from).add(to);
              grown = true;
            }
          }
          for (const leg of legs) expect(reached.has(leg.from)).toBe(true);
        });
      });
    });

    test('hides what a machine sews for the hand behind the cloth: under the thread that is seen', () => {
      const unit = stitch.build({});
      const row = layRow(unit, glide, 6);
      const seen = row.filter(({ kind }) => kind !== 'under').flatMap(({ xy }) => dense(xy));
      // Rows end in the middle of nothing; look at the middle.
      const middle = 3 * unit.length;
      for (const leg of row.filter(({ kind, unit: k }) => kind === 'under' && k === 3)) {
        for (const [u, v] of dense(leg.xy)) {
          const clear = Math.min(...seen.map(([su, sv]) => Math.hypot(su - u, sv - v)));
          // A sprig's thread travels in the seam itself.
          if (Math.abs(v) > 1e-9)
            expect(clear, `${leg.name} at ${u - middle}, ${v}`).toBeLessThan(HALF_A_THREAD);
        }
      }
    });

    test('shows curves as curves: no chord turns 15 degrees or more', () => {
      always(stitch, (unit) => {
        for (const leg of unit.legs) {
          if (leg.kind !== 'curve' && leg.kind !== 'loop') continue;
          for (let i = 2; i + 3 < leg.path.length; i += 2) {
            const before = Math.atan2(leg.path[i + 1] - leg.path[i - 1], leg.path[i] - leg.path[i - 2]);
            const after = Math.atan2(leg.path[i + 3] - leg.path[i + 1], leg.path[i + 2] - leg.path[i]);
            const turn = Math.abs(Math.atan2(Math.sin(after - before), Math.cos(after - before)));
            expect(turn).toBeLessThan((15 * Math.PI) / 180);
          }
        }
      });
    });

    test('has no hole so near another that they tear into one, unless they are the same', () => {
      const unit = stitch.build({});
      const row = layRow(unit, glide, 3).filter(({ kind }) => kind !== 'under');
      const holes = row.flatMap((leg) => [leg.xy[0], leg.xy[leg.xy.length - 1]]);
      for (const [au, av] of holes) {
        for (const [bu, bv] of holes) {
          const apart = Math.hypot(au - bu, av - bv);
          expect(apart < 1e-9 || apart >= 0.4).toBe(true);
        }
      }
    });

    test('is of a default size that dresses a seam of a crazy-patch block', () => {
      for (const { name, min, max, default: usual } of stitch.parameters) {
        expect(usual, name).toBeGreaterThanOrEqual(min);
        expect(usual, name).toBeLessThanOrEqual(max);
      }
      const { reach } = stitch.build({});
      expect(reach.left + reach.right).toBeLessThanOrEqual(11);
      stitch.build({ repeat: stitch.smallest.repeat, width: stitch.smallest.width });
    });

    test('is built alike from the same values', () => {
      always(stitch, (unit, values) => {
        expect(stitch.build(values)).toEqual(unit);
      });
    });
  },
);

describe('values that cannot be built', () => {
  const feather = stitchNamed('feather');
  const message = (build: () => unknown): string => {
    try {
      build();
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      return (error as InputError).message;
    }
    throw new Error('it was built');
  };

  test.each([3.1, 25.1, 0, -8, Number.NaN, Number.POSITIVE_INFINITY])(
    'a repeat of %d mm is refused',
    (repeat) => {
      expect(message(() => feather.build({ repeat }))).toBe(
        `feather repeat: ${repeat} mm is out of range; 4 to 20 mm`,
      );
    },
  );

  test('a fitted repeat may be a fifth shorter and a quarter longer than one that can be asked for', () => {
    expect(feather.build({ repeat: 3.2 }).length).toBe(1.6);
    expect(feather.build({ repeat: 25 }).length).toBe(12.5);
  });

  test('an unknown parameter is answered with the nearest', () => {
    expect(message(() => feather.build({ widht: 8 }))).toMatch(/no parameter "widht"; did you mean "width"/);
    expect(message(() => feather.build({ constructor: 8 }))).toMatch(/no parameter "constructor"/);
  });

  test('a missing value takes its default', () => {
    expect(feather.build({ width: 8 })).toEqual(feather.build({}));
  });
});

/** A path with a point at least every 0.1 mm. */
function dense(path: readonly (readonly [number, number])[]): [number, number][] {
  return path.slice(1).flatMap(([u, v], i) => {
    const [pu, pv] = path[i];
    const count = Math.max(1, Math.ceil(Math.hypot(u - pu, v - pv) / 0.1));
    return Array.from({ length: count + 1 }, (_, k): [number, number] => [
      pu + ((u - pu) * k) / count,
      pv + ((v - pv) * k) / count,
    ]);
  });
}
