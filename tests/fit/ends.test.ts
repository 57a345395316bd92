import fc from 'fast-check';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import { describe, expect, test } from 'vitest';
import { clearOfThrough, clearOfWedge, taperInto } from '../../src/fit/ends.js';
import type { Chain } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { reachOf } from '../../src/fit/sized.js';
import type { Manner } from '../../src/formats/dressing.js';
import { stitchNamed } from '../stitches/dictionary.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { butting, mapOfLines } from './block-of-lines.js';

const factory = new GeometryFactory();
const polygon = (points: readonly (readonly [number, number])[]) =>
  factory.createPolygon([...points, points[0]].map(([x, y]) => new Coordinate(x, y)));
/** JTS (jsts): DistanceOp, the least distance between two polygons. */
const distanceBetween = (a: unknown, b: unknown): number => DistanceOp.distance(a, b);

/** A straight band from distance `from` to `to` along a ray, reaching `left` and `right`. */
function bandAlong(
  at: readonly [number, number],
  direction: number,
  from: number,
  to: number,
  reach: { left: number; right: number },
) {
  const [tx, ty] = [Math.cos(direction), Math.sin(direction)];
  const [nx, ny] = [ty, -tx];
  const corner = (s: number, v: number): [number, number] => [
    at[0] + s * tx + v * nx,
    at[1] + s * ty + v * ny,
  ];
  return polygon([
    corner(from, reach.left),
    corner(to, reach.left),
    corner(to, -reach.right),
    corner(from, -reach.right),
  ]);
}

const angle = fc.double({ min: 0.6, max: Math.PI / 2, noNaN: true });
const reach = fc.double({ min: 0.5, max: 6, noNaN: true });
const gap = fc.double({ min: 0.2, max: 2, noNaN: true });

describe('an end that stops short', () => {
  test('of a through treatment is exactly the gap away from it (polygon distance by JTS)', () => {
    fc.assert(
      fc.property(angle, reach, reach, gap, (theta, t, a, g) => {
        const s = clearOfThrough(t, g, a, theta);
        const through = bandAlong([-200, 0], 0, 0, 400, { left: t, right: t });
        const own = bandAlong([0, 0], theta, s, s + 40, { left: a, right: a });
        expect(distanceBetween(through, own)).toBeCloseTo(g, 9);
      }),
    );
  });

  test('in a wedge keeps the gap to a neighbor that does the same (polygon distance by JTS)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.6, max: 2.6, noNaN: true }), reach, reach, gap, (phi, a, b, g) => {
        // 60 mm of band on both arms; each keeps to its own side of the bisector
        const one = bandAlong([0, 0], 0, clearOfWedge(a, g, phi), 60, { left: 0, right: a });
        const other = bandAlong([0, 0], phi, clearOfWedge(b, g, phi), 60, { left: b, right: 0 });
        expect(distanceBetween(one, other)).toBeGreaterThanOrEqual(g - 1e-9);
        if (a === b) expect(distanceBetween(one, other)).toBeCloseTo(g, 9);
      }),
    );
    const equal = (a: number, g: number, phi: number) => {
      const s = clearOfWedge(a, g, phi);
      return distanceBetween(
        bandAlong([0, 0], 0, s, 60, { left: 0, right: a }),
        bandAlong([0, 0], phi, s, 60, { left: a, right: 0 }),
      );
    };
    expect(equal(4, 0.6, 2)).toBeCloseTo(0.6, 9);
  });

  test('leaves the end gap of the formula on a real seam, whatever the angle and the sizes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.7, max: Math.PI / 2, noNaN: true }),
        fc.double({ min: 5, max: 9, noNaN: true }),
        fc.double({ min: 5, max: 9, noNaN: true }),
        (theta, widthThrough, widthOwn) => {
          const map = butting(theta);
          const through = map.junctions[0].through!;
          const own = through === 1 ? 2 : 1;
          const asks = [
            askFor(through, 'feather', { manner: 'short', sizes: { width: widthThrough } }),
            askFor(own, 'feather', { manner: 'short', sizes: { width: widthOwn } }),
          ];
          const fits = fitLines(map, asks, { gap: 0.6, outline: 'free' });
          const found = fits[1].fit;
          const unit = asks[1].sized.build(1, asks[1].sized.repeat);
          const { left } = reachOf(unit, true, 1);
          const t = reachOf(asks[0].sized.build(1, asks[0].sized.repeat), true, 1).left;
          const expected = clearOfThrough(t, 0.6, left, theta);
          const atJunction = map.seams[own - 1].ends![0].kind === 'junction' ? 0 : 1;
          expect(found.endGap[atJunction]).toBeCloseTo(expected, 3);
          expect(found.endGap[1 - atJunction]).toBe(0);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('on a curved through seam moves out until its thread is clear of the other band', () => {
    const radius = 18;
    const arc = Array.from({ length: 181 }, (_, i) => {
      const t = Math.PI * (1 + i / 180);
      return [100 + radius * Math.cos(t), 100 + radius * Math.sin(t)] as const;
    });
    // From inside the bend a straight seam meets its top: the bend's flanks come toward it.
    const map = mapOfLines([
      arc,
      [
        [100, 100 - radius],
        [100, 150],
      ],
    ]);
    const through = map.junctions[0].through!;
    const own = 3 - through;
    const sizes = { width: 10 };
    const fits = fitLines(
      map,
      [
        askFor(through, 'feather', { manner: 'short', sizes }),
        askFor(own, 'feather', { manner: 'short', sizes }),
      ],
      { gap: 0.6, outline: 'free' },
    );
    const clear = 5 + 0.6;
    for (const [x, y] of legPoints(chainsOf(fits[1].fit))) {
      if (y > 100) continue;
      expect(radius - Math.hypot(x - 100, y - 100)).toBeGreaterThanOrEqual(clear - 0.05);
    }
  });
});

describe('an end that tucks', () => {
  test('runs in to the through seam and not over it', () => {
    for (const theta of [0.7, 1.1, Math.PI / 2]) {
      const map = butting(theta);
      const through = map.junctions[0].through!;
      const fits = fitLines(map, [askFor(through, 'herringbone'), askFor(3 - through, 'feather')], {
        gap: 0.6,
        outline: 'free',
      });
      const depths = legPoints(chainsOf(fits[1].fit)).map(([, y]) => y - 100);
      expect(Math.min(...depths)).toBeGreaterThanOrEqual(-0.06);
      expect(Math.min(...depths)).toBeLessThan(1.5);
      expect(fits[1].tucksUnder).toEqual([through]);
      expect(fits[0].tucksUnder).toEqual([]);
    }
  });

  test('leaves out daisies within a millimeter of the thread that will lie over it', () => {
    const map = butting(Math.PI / 2);
    const through = map.junctions[0].through!;
    const rules = { gap: 0.6, outline: 'free' } as const;
    const daisies = askFor(3 - through, 'lazy-daisy');
    const fits = fitLines(map, [askFor(through, 'feather'), daisies], rules);
    const petals = (chains: readonly Chain[]) =>
      chains.flatMap(({ kind }) => kind.filter((k) => k === 'loop')).length;
    const [alone] = fitLines(map, [daisies], rules);
    expect(petals(chainsOf(fits[1].fit))).toBeLessThan(petals(chainsOf(alone.fit)));
    const over = legPoints(chainsOf(fits[0].fit));
    const chains = chainsOf(fits[1].fit);
    let nearest = Infinity;
    for (const chain of chains) {
      for (let leg = 0; leg < chain.from.length; leg++) {
        if (chain.kind[leg] !== 'loop') continue;
        for (let p = chain.pathStart[leg]; p < chain.pathStart[leg + 1]; p++) {
          for (const [x, y] of over) {
            nearest = Math.min(nearest, Math.hypot(chain.path[2 * p] - x, chain.path[2 * p + 1] - y));
          }
        }
      }
    }
    expect(nearest).toBeGreaterThan(1);
    expect(chains.some((chain) => chain.kind.includes('loop'))).toBe(true);
  });
});

describe('an end at the outline', () => {
  test('whole repeats end on it, and the last one leans to its direction', () => {
    for (const slant of [-0.4, -0.25, 0.25, 0.4]) {
      // a block whose right side slants, and a level seam that ends on it
      const x = (y: number) => 150 + (y - 100) * Math.tan(slant);
      const map = mapOfLines([
        [
          [40, 50],
          [x(50), 50],
          [x(150), 150],
          [40, 150],
          [40, 50],
        ],
        [
          [40, 100],
          [150, 100],
        ],
      ]);
      const rules = { gap: 0.6, outline: 'free' } as const;
      const [{ fit }] = fitLines(map, [askFor(1, 'blanket', { side: 'left', sizes: { width: 6 } })], rules);
      const arm = askFor(1, 'blanket')
        .sized.build(1, 5)
        .legs.find((leg) => leg.name === 'arm')!.class;
      const ends = chainsOf(fit).flatMap(({ from, to, nodes, legClass }) =>
        Array.from(from, (_, leg) => leg)
          .filter((leg) => legClass[leg] === arm)
          .map((leg) => [from[leg], to[leg]].map((n) => [nodes[2 * n], nodes[2 * n + 1]])),
      );
      const [foot, tip] = ends.sort((a, b) => b[0][0] - a[0][0])[0];
      expect(Math.abs(foot[0] - 150)).toBeLessThan(0.3);
      const leans = Math.atan2(tip[0] - foot[0], foot[1] - tip[1]);
      expect(Math.abs(leans - -slant)).toBeLessThan(0.06);
    }
  });
});

describe('an end at a curved outline that is trimmed', () => {
  const radius = 45;
  const circle = Array.from({ length: 361 }, (_, i): [number, number] => {
    const t = (Math.PI * i) / 180;
    return i === 360 ? [145, 100] : [100 + radius * Math.cos(t), 100 + radius * Math.sin(t)];
  });
  const stitches = fc.constantFrom('feather', 'cretan', 'fly', 'herringbone', 'lazy-daisy');
  const rules = { gap: 0.6, outline: 'trim' } as const;

  test('keeps every hole and every belly of a curve 0.7 mm inside a round block', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 36, noNaN: true }), stitches, (off, stitch) => {
        const half = Math.sqrt(radius * radius - off * off);
        const map = mapOfLines([
          circle,
          [
            [100 - half, 100 + off],
            [100 + half, 100 + off],
          ],
        ]);
        const [{ fit }] = fitLines(map, [askFor(1, stitch)], rules);
        const far = legPoints(chainsOf(fit)).map(([x, y]) => Math.hypot(x - 100, y - 100));
        expect(Math.max(...far)).toBeLessThanOrEqual(radius - 0.7 + 0.06);
      }),
      { numRuns: 40 },
    );
  });

  test('and as far from a bay in it', () => {
    fc.assert(
      fc.property(fc.double({ min: -12, max: 12, noNaN: true }), stitches, (along, stitch) => {
        // a block whose upper edge is a round bay of radius 20, and a seam that ends on it
        const bay = Array.from({ length: 181 }, (_, i): [number, number] => {
          const t = Math.PI - (Math.PI * i) / 180;
          return [100 + 20 * Math.cos(t), 60 + 20 * Math.sin(t)];
        });
        const map = mapOfLines([
          [[50, 60], ...bay, [150, 60], [150, 150], [50, 150], [50, 60]],
          [
            [100 + along, 60 + Math.sqrt(400 - along * along)],
            [100 + along, 150],
          ],
        ]);
        const [{ fit }] = fitLines(map, [askFor(1, stitch)], rules);
        const near = legPoints(chainsOf(fit)).map(([x, y]) => Math.hypot(x - 100, y - 60));
        expect(Math.min(...near)).toBeGreaterThanOrEqual(20 + 0.7 - 0.06);
        expect(Math.min(...near)).toBeLessThan(20 + 3);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a bevelled end', () => {
  test('is cut to the slant of the through band, a gap away from it', () => {
    const theta = 0.9;
    const map = butting(theta);
    const through = map.junctions[0].through!;
    const asks = [
      askFor(through, 'feather', { manner: 'bevel', sizes: { width: 6 } }),
      askFor(3 - through, 'herringbone', { manner: 'bevel', sizes: { width: 8 } }),
    ];
    const fits = fitLines(map, asks, { gap: 0.6, outline: 'free' });
    const depths = legPoints(chainsOf(fits[1].fit)).map(([, y]) => y - 100);
    expect(Math.min(...depths)).toBeGreaterThanOrEqual(3 + 0.6 - 0.06);
    expect(Math.min(...depths)).toBeLessThan(3 + 0.6 + 1);
  });
});

describe('where three seams meet and none runs through', () => {
  const star = (a: number, b: number) =>
    mapOfLines(
      [0, a, b].map((t) => [[100, 100] as const, [100 + 60 * Math.cos(t), 100 + 60 * Math.sin(t)] as const]),
    );

  test('arms that have a wedge for themselves keep their length in the point of a Y, and none comes near the other lines', () => {
    const full = (id: number, side: 'left' | 'right') => askFor(id, 'blanket', { side });
    const arm = stitchNamed('blanket')
      .build({})
      .legs.find(({ name }) => name === 'arm')!.class;
    let alone = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 1.7, max: 2.4, noNaN: true }),
        fc.double({ min: 3.9, max: 4.6, noNaN: true }),
        fc.array(fc.constantFrom('left' as const, 'right' as const), { minLength: 3, maxLength: 3 }),
        (a, b, sides) => {
          const map = star(a, b);
          fc.pre(map.junctions[0].through === null);
          const fits = fitLines(
            map,
            map.seams.map(({ id }, i) => full(id, sides[i])),
            { gap: 0.6, outline: 'free' },
          );
          const points = fits.map(({ fit }) =>
            legPoints(chainsOf(fit)).filter(([x, y]) => Math.hypot(x - 100, y - 100) < 15),
          );
          for (let i = 0; i < 3; i++) {
            const gaps = points[i].flatMap(([x, y]) =>
              points[(i + 1) % 3].map(([p, q]) => Math.hypot(x - p, y - q)),
            );
            expect(Math.min(...gaps)).toBeGreaterThan(0.6 - 0.03);
          }
          // which wedge the arms of each line stand in, told by the next line on that hand
          const { arms } = map.junctions[0];
          const ways = arms.map(({ seam, sense, direction }) => {
            const toLeft = (sides[(seam as number) - 1] === 'left') === (sense === 1);
            const turnTo = (other: number) => {
              const turn = toLeft ? direction - other : other - direction;
              return ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
            };
            const [next] = arms
              .filter((one) => one.seam !== seam)
              .sort((p, q) => turnTo(p.direction) - turnTo(q.direction));
            return { seam: seam as number, wedge: [seam, next.seam].sort().join() };
          });
          for (const { seam, wedge } of ways) {
            if (ways.filter((one) => one.wedge === wedge).length > 1) continue;
            alone++;
            const lengths = chainsOf(fits[seam - 1].fit).flatMap(({ from, to, nodes, legClass }) =>
              [...from.keys()]
                .filter((leg) => legClass[leg] === arm)
                .map((leg) =>
                  Math.hypot(
                    nodes[2 * from[leg]] - nodes[2 * to[leg]],
                    nodes[2 * from[leg] + 1] - nodes[2 * to[leg] + 1],
                  ),
                ),
            );
            expect(Math.min(...lengths)).toBeGreaterThan(0.9 * Math.max(...lengths));
          }
        },
      ),
      { numRuns: 40 },
    );
    expect(alone).toBeGreaterThan(20);
  });

  test('two arms share a wedge of any angle: what they claim of it stays a gap apart, and each begins as near the point as that lets it', () => {
    const GAP = 0.6;
    const reach = fc.double({ min: 0.3, max: 8, noNaN: true });
    /** What an arm claims of a wedge to its left: its line along a direction, v to the left of that (mirrored: right). */
    const claimed = (phi: number, facing: number, other: number) => {
      const { setback, taper } = taperInto([{ phi, right: false, facing, other }], GAP)!;
      const { slope, inset } = taper.left;
      const full = slope === Infinity ? setback : (facing + inset) / slope;
      const at = (d: number): [number, number] => [
        d,
        slope === Infinity ? facing : Math.max(0, Math.min(facing, d * slope - inset)),
      ];
      // where its arms have no room yet the line itself begins
      const first = slope === Infinity ? setback : Math.max(setback, inset / slope);
      const points = [[setback, 0], [first, 0], at(first), at(Math.max(setback, full)), at(60), [60, 0]];
      return { setback, full, points };
    };
    fc.assert(
      fc.property(fc.double({ min: 0.35, max: 3, noNaN: true }), reach, reach, (phi, a, b) => {
        const [one, two] = [claimed(phi, a, b), claimed(phi, b, a)];
        const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
        const own = polygon(one.points.map(([d, v]) => [d, v]));
        const next = polygon(two.points.map(([d, v]) => [d * cos + v * sin, d * sin - v * cos]));
        const apart = distanceBetween(own, next);
        expect(apart).toBeGreaterThan(GAP - 1e-3);
        // an arm that reaches to the middle of the wedge begins where half of it fits there, or half a millimeter later
        const half = (a / 2 + GAP / (2 * Math.cos(phi / 2))) / Math.tan(phi / 2);
        expect(one.setback).toBeLessThanOrEqual(half + 0.5 + 1e-6);
        // beside one that reaches nothing it has all that is clear of the line itself
        const alone = claimed(phi, a, 0);
        expect(alone.full).toBeLessThanOrEqual(
          Math.max(GAP / sin, phi < Math.PI / 2 ? (a + GAP / cos) / Math.tan(phi) : 0) + 1e-6,
        );
      }),
      { numRuns: 400 },
    );
  });

  test('treatments that tuck share the point: each keeps to its own side of the bisectors', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.7, max: 2.4, noNaN: true }),
        fc.double({ min: 3.9, max: 4.6, noNaN: true }),
        fc.constantFrom('feather', 'fly', 'chevron'),
        (a, b, stitch) => {
          const map = star(a, b);
          if (map.junctions[0].through !== null) return;
          const fits = fitLines(
            map,
            map.seams.map((seam) => askFor(seam.id, stitch)),
            { gap: 0.6, outline: 'free' },
          );
          const directions = map.seams.map((seam) => {
            const arm = map.junctions[0].arms.find((candidate) => candidate.seam === seam.id)!;
            return arm.direction;
          });
          // Across the wedges the gap itself: half of it on each side of the bisector.
          const points = fits.map(({ fit }) =>
            legPoints(chainsOf(fit)).filter(([x, y]) => Math.hypot(x - 100, y - 100) < 15),
          );
          for (let i = 0; i < 3; i++) {
            for (const [x, y] of points[i]) {
              for (const [p, q] of points[(i + 1) % 3]) {
                expect(Math.hypot(x - p, y - q)).toBeGreaterThan(0.6 - 0.03);
              }
            }
          }
          fits.forEach(({ fit }, i) => {
            for (const [x, y] of legPoints(chainsOf(fit))) {
              const heading = Math.atan2(y - 100, x - 100);
              const off = directions.map((d) =>
                Math.abs(Math.atan2(Math.sin(heading - d), Math.cos(heading - d))),
              );
              expect(off[i]).toBeLessThanOrEqual(Math.min(...off) + 0.02);
            }
          });
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('on a block that is joined into other work', () => {
  test('treatments run past the outline, and no needle point further than 2.5 mm', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 15, max: 89 }),
        fc.constantFrom('feather', 'blanket', 'cretan'),
        fc.constantFrom<Manner>('tuck', 'bevel', 'short'),
        (degrees, stitch, manner) => {
          const slope = Math.tan((degrees * Math.PI) / 180);
          // from the upper edge down into the patch
          const foot = Math.min(190, 80 + 100 / slope);
          const map = mapOfLines([
            [
              [0, 0],
              [200, 0],
              [200, 200],
              [0, 200],
              [0, 0],
            ],
            [
              [80, 0],
              [foot, (foot - 80) * slope],
            ],
          ]);
          const [{ fit }] = fitLines(map, [askFor(1, stitch, { manner })], { gap: 0.6, outline: 'join' });
          const past = Math.max(...legPoints(chainsOf(fit)).map(([, y]) => -y));
          // at a shallow crossing whole strokes may end before it
          if (degrees > 45) expect(past).toBeGreaterThan(0.5);
          expect(past).toBeLessThan(2.5 + 0.06);
        },
      ),
    );
  });
});

describe('what ends keep clear of others', () => {
  test('is taken off first: no other number of repeats fits what is left better, and stretched less', () => {
    const worse: string[] = [];
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 110, noNaN: true }),
        fc.constantFrom('herringbone', 'feather', 'cross', 'fly', 'blanket'),
        fc.constantFrom('blanket', 'cretan', 'running'),
        fc.constantFrom('short', 'bevel', 'tuck'),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (length, stitch, through, manner: Manner, clear) => {
          const map = mapOfLines([
            [
              [40, 20],
              [40, 180],
            ],
            [
              [40, 100],
              [40 + length, 100],
            ],
            [
              [40 + length, 20],
              [40 + length, 180],
            ],
          ]);
          const isAcross = (id: number) => map.seams[id - 1].points[1] === map.seams[id - 1].points[3];
          const asks = map.seams.map(({ id }) => askFor(id, isAcross(id) ? stitch : through, { manner }));
          const fits = fitLines(map, asks, { gap: clear, outline: 'free' });
          const { fit } = fits.find(({ fit }) => isAcross(Number(fit.seam)))!;
          for (const { from, to, repeats } of fit.stretches) {
            const wanted = fit.wanted * fit.scale!;
            const off = (count: number) => Math.abs(Math.log((to - from) / count / wanted));
            // a whole repeat more or less is always allowed, whatever its phase; the scale may hold one back
            for (const other of [repeats - 1, repeats + 1]) {
              if (other > 0 && off(other) < off(repeats) - 1e-9) {
                worse.push(
                  `${stitch} between ${through}, ${manner}: ${repeats} on ${(to - from).toFixed(2)} mm`,
                );
              }
            }
            if (to > length + 1e-6 || from < -1e-6)
              worse.push(`${stitch}: from ${from} to ${to} of ${length}`);
          }
        },
      ),
      { numRuns: 150 },
    );
    expect(worse).toEqual([]);
  });
});

describe('a seam that meets the outline at a sharp angle', () => {
  test('is covered up to it, where strokes to one hand are cut and the next one starts behind them', () => {
    const bare: string[] = [];
    for (const stitch of ['cretan', 'open-cretan', 'blanket', 'feather']) {
      for (const degrees of [25, 30, 40, 55]) {
        for (const reverse of [false, true]) {
          const angle = (degrees * Math.PI) / 180;
          const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
          const length = 100 / dy;
          const map = mapOfLines(
            [
              [
                [0, 0],
                [400, 0],
                [400, 100],
                [0, 100],
                [0, 0],
              ],
              [
                [100, 0],
                [100 + length * dx, 100],
              ],
            ],
            400,
            100,
          );
          const [{ fit }] = fitLines(map, [askFor(1, stitch, { reverse })], { gap: 0.6, outline: 'trim' });
          const points = legPoints(chainsOf(fit));
          // 0.7 mm inside the outline is where thread ends on a block that is trimmed
          for (let d = 0.7 / dy; d < length - 0.7 / dy; d += 0.5) {
            const [x, y] = [100 + d * dx, d * dy];
            const away = Math.min(...points.map(([p, q]) => Math.hypot(p - x, q - y)));
            if (away > 3.2)
              bare.push(`${stitch} at ${degrees} degrees: ${away.toFixed(1)} mm at ${d.toFixed(1)}`);
          }
        }
      }
    }
    expect(bare).toEqual([]);
  });
});
