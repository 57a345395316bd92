import { describe, expect, test } from 'vitest';
import type { SeamFit } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import type { LineFit } from '../../src/fit/line-fit.js';
import { askFor, chainsOf } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

type XY = readonly [number, number];

const RULES = { gap: 0.6, outline: 'free' } as const;
const SIDE = 50;
const CORNER: XY = [100, 100];
/** Of every kind that bends with its line: one-sided, to both sides, crossed, in links, leaves. */
const STITCHES = [
  'blanket',
  'feather',
  'herringbone',
  'chevron',
  'fly',
  'chain',
  'cretan',
  'fern',
  'single-feather',
  'closed-blanket',
];
/** Figures that keep their shape, and a stitch that breaks at every corner. */
const FIGURES = ['lazy-daisy', 'pistil', 'star-stitch', 'ermine', 'lazy-daisy-clusters', 'half-wheels'];
const DEGREES = [20, 28, 45, 60, 75, 90, 105, 119, 121, 135, 150, 160];
const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Two sides that meet at the corner; coming in along +x, turning to the left when positive. */
function bent(stitch: string, degrees: number, side: 'left' | 'right'): LineFit {
  const turn = radians(degrees);
  const end: XY = [CORNER[0] + SIDE * Math.cos(turn), CORNER[1] - SIDE * Math.sin(turn)];
  const map = mapOfLines([[[CORNER[0] - SIDE, CORNER[1]], CORNER, end]]);
  return fitLines(map, [askFor(1, stitch, { side })], RULES)[0];
}

interface Leg {
  readonly chain: number;
  readonly unit: number;
  readonly points: readonly XY[];
}

/** What is seen on the cloth, leg by leg. */
function legsOf(fit: SeamFit): Leg[] {
  return chainsOf(fit).flatMap(({ from, kind, unit, path, pathStart }, chain) =>
    [...from.keys()]
      .filter((leg) => kind[leg] !== 'under')
      .map((leg) => {
        const points: XY[] = [];
        for (let p = pathStart[leg]; p < pathStart[leg + 1]; p++) points.push([path[2 * p], path[2 * p + 1]]);
        return { chain, unit: unit[leg], points };
      }),
  );
}

/** Points every 0.15 mm along the legs. */
const along = (legs: readonly Leg[]): XY[] =>
  legs.flatMap(({ points }) =>
    points.flatMap((q, i): XY[] => {
      if (i === 0) return [q];
      const [px, py] = points[i - 1];
      const pieces = Math.max(1, Math.ceil(Math.hypot(q[0] - px, q[1] - py) / 0.15));
      return Array.from({ length: pieces }, (_, k): XY => {
        const t = (k + 1) / pieces;
        return [px + t * (q[0] - px), py + t * (q[1] - py)];
      });
    }),
  );

function crossings(legs: readonly Leg[]): number {
  const side = (a: XY, b: XY, c: XY) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  const cross = (p: XY, q: XY, r: XY, s: XY) =>
    side(p, q, r) * side(p, q, s) < -1e-4 && side(r, s, p) * side(r, s, q) < -1e-4;
  let count = 0;
  legs.forEach((a, i) => {
    for (const b of legs.slice(i + 1)) {
      // a unit crosses itself and its neighbors as it does on a straight
      if (a.chain === b.chain && Math.abs(a.unit - b.unit) <= 1) continue;
      for (let k = 1; k < a.points.length; k++) {
        for (let m = 1; m < b.points.length; m++) {
          if (cross(a.points[k - 1], a.points[k], b.points[m - 1], b.points[m])) count++;
        }
      }
    }
  });
  return count;
}

const every = (
  say: (fit: LineFit, stitch: string, degrees: number, side: 'left' | 'right') => string | null,
  stitches: readonly string[] = STITCHES,
) =>
  stitches.flatMap((stitch) =>
    DEGREES.flatMap((size) =>
      [size, -size].flatMap((degrees) =>
        (['left', 'right'] as const).flatMap((side) => {
          const said = say(bent(stitch, degrees, side), stitch, degrees, side);
          return said === null ? [] : [`${stitch}, ${degrees} degrees, to the ${side}: ${said}`];
        }),
      ),
    ),
  );

describe('at a corner of 20 to 160 degrees, to either hand', () => {
  test('no thread crosses what is not its neighbor, on the inner side or the outer', () => {
    expect(
      every(({ fit }) => {
        const near = legsOf(fit).filter(({ points }) =>
          points.some(([x, y]) => Math.hypot(x - CORNER[0], y - CORNER[1]) < 25),
        );
        const count = crossings(near);
        return count > 0 ? `${count} crossings` : null;
      }),
    ).toEqual([]);
  });

  test('figures that keep their shape do not touch each other, on the inner side or the outer', () => {
    const gapOf = (fit: SeamFit, near: (p: XY) => boolean): number => {
      const byUnit = new Map<string, XY[]>();
      const isPlain = chainsOf(fit).map(
        ({ units, from, kind }) => units === from.length && kind.every((one) => one === 'straight'),
      );
      for (const leg of legsOf(fit)) {
        // a plain line through the point is no figure
        if (isPlain[leg.chain]) continue;
        const key = `${leg.chain}/${leg.unit}`;
        byUnit.set(key, [...(byUnit.get(key) ?? []), ...along([leg]).filter(near)]);
      }
      const units = [...byUnit.values()];
      let least = Infinity;
      units.forEach((a, i) => {
        for (const b of units.slice(i + 1))
          for (const [x, y] of a) for (const [p, q] of b) least = Math.min(least, Math.hypot(x - p, y - q));
      });
      return least;
    };
    expect(
      every(
        ({ fit }, _, degrees) => {
          if (Math.abs(degrees) > 120) return null;
          const gap = gapOf(fit, ([x, y]) => Math.hypot(x - CORNER[0], y - CORNER[1]) < 16);
          // a thread is 0.4 mm wide
          return gap < 0.45 ? `${gap.toFixed(2)} mm apart` : null;
        },
        // half wheels stand rim to rim on a straight, too
        ['detached-wheatear', ...FIGURES.filter((stitch) => stitch !== 'half-wheels')],
      ),
    ).toEqual([]);
  }, 120_000);

  test('whole (or half) repeats fill both sides between their ends, each within the stretch allowed', () => {
    expect(
      every(({ fit }) => {
        const wrong = fit.stretches.filter(({ from, to, repeats }) => {
          const share = (to - from) / repeats / fit.wanted / fit.scale!;
          return (2 * repeats) % 1 !== 0 || share < 0.8 - 1e-6 || share > 1.25 + 1e-6;
        });
        const covered = fit.stretches.reduce((sum, { from, to }) => sum + to - from, 0);
        const first = fit.stretches[0];
        if (!first) return 'nothing';
        return wrong.length > 0 || covered > 2 * SIDE + 1e-6 ? `${wrong.length} stretches` : null;
      }),
    ).toEqual([]);
  });

  test('a treatment that breaks begins anew: its two parts keep a gap apart', () => {
    expect(
      every(({ fit }, _, degrees) => {
        if (Math.abs(degrees) <= 120) return null;
        const half = radians(degrees) / 2;
        const own = legsOf(fit);
        // the plain line that joins them in the point is no part of either
        const atPoint = own.filter(({ points }) =>
          points.some(([x, y]) => Math.hypot(x - CORNER[0], y - CORNER[1]) < 1e-6),
        );
        const joining = new Set(atPoint.map(({ chain }) => chain));
        const legs = own.filter(({ chain }) => !joining.has(chain));
        const sides = [-1, 1].map((sign) =>
          along(legs).filter(([x, y]) => {
            const across = (x - CORNER[0]) * Math.cos(half) - (y - CORNER[1]) * Math.sin(half);
            return sign * across > 0 && Math.hypot(x - CORNER[0], y - CORNER[1]) < 45;
          }),
        );
        let least = Infinity;
        for (const [x, y] of sides[0]) {
          for (const [p, q] of sides[1]) least = Math.min(least, Math.hypot(x - p, y - q));
        }
        return least < 0.6 - 0.02 ? `${least.toFixed(2)} mm apart` : null;
      }),
    ).toEqual([]);
  });

  test('round the outer side a treatment that turns leaves no gap much wider than on a straight', () => {
    expect(
      every(({ fit }, _, degrees) => {
        if (Math.abs(degrees) > 120) return null;
        const turn = radians(degrees);
        const points = along(legsOf(fit));
        const outer = -Math.sign(degrees);
        const straight = points.filter(([x]) => x > CORNER[0] - 42 && x < CORNER[0] - 15);
        const reach = Math.max(0, ...straight.map(([, y]) => outer * (CORNER[1] - y)));
        // what lies wholly to the inner hand leaves the outer one bare anyway
        if (reach < 1) return null;
        const h = reach / 2;
        const bare = ([x, y]: XY) => Math.min(...points.map(([p, q]) => Math.hypot(p - x, q - y)));
        const places = (from: number, to: number, at: (t: number) => XY) =>
          Array.from({ length: 1 + Math.ceil((to - from) / 0.3) }, (_, k) => at(from + 0.3 * k));
        const usual = Math.max(...places(16, 40, (d) => [CORNER[0] - d, CORNER[1] - outer * h]).map(bare));
        const fan = Array.from({ length: 25 }, (_, k): XY => {
          const angle = (-outer * Math.PI) / 2 - (turn * k) / 24;
          return [CORNER[0] + h * Math.cos(angle), CORNER[1] + h * Math.sin(angle)];
        });
        const around = Math.max(...fan.map(bare));
        // Closed form: an arc of reach / 0.6 that rounds the corner lies further inside it than it reaches, above 103 degrees.
        const inside = Math.max(0, (reach / 0.6) * (1 / Math.cos(turn / 2) - 1) - reach);
        return around > 1.6 * usual + 0.5 + inside
          ? `${around.toFixed(1)} mm from any thread, ${usual.toFixed(1)} on a straight`
          : null;
      }),
    ).toEqual([]);
  });

  test('a treatment that breaks leaves the point of the corner bare by 3 mm at most: a plain line runs through', () => {
    expect(
      every(
        ({ fit }, _, degrees) => {
          if (Math.abs(degrees) <= 120) return null;
          const turn = radians(degrees);
          const points = along(legsOf(fit));
          const bare = Array.from({ length: 40 }, (_, k) => k / 10).filter((d) =>
            [
              [CORNER[0] - d, CORNER[1]],
              [CORNER[0] + d * Math.cos(turn), CORNER[1] - d * Math.sin(turn)],
            ].every(([x, y]) => points.every(([p, q]) => Math.hypot(p - x, q - y) > 1)),
          );
          return bare.length > 15 ? `${(bare.length / 5).toFixed(1)} mm` : null;
        },
        [...STITCHES, ...FIGURES],
      ),
    ).toEqual([]);
  });

  test('the seam itself stays covered round its corner: at most 3 mm more of it are bare than between repeats', () => {
    const wrong = every(
      ({ fit }, _, degrees) => {
        const turn = radians(degrees);
        const points = along(legsOf(fit)).filter(([x, y]) => Math.hypot(x - CORNER[0], y - CORNER[1]) < 45);
        const at = (u: number): XY =>
          u < 0
            ? [CORNER[0] + u, CORNER[1]]
            : [CORNER[0] + u * Math.cos(turn), CORNER[1] - u * Math.sin(turn)];
        let [round, between, since] = [0, 0, -40];
        for (let u = -40; u <= 40; u += 0.5) {
          const [x, y] = at(u);
          if (!points.some(([p, q]) => Math.abs(p - x) < 1.5 && Math.hypot(p - x, q - y) < 1.5)) continue;
          if (since < 1 && u > -1) round = Math.max(round, u - since);
          else if (u < -12 || since > 12) between = Math.max(between, u - since);
          since = u;
        }
        return round > between + 3.5 ? `${round.toFixed(1)} mm, ${between.toFixed(1)} elsewhere` : null;
      },
      [...FIGURES, 'detached-wheatear', 'herringbone', 'tied-herringbone', 'braid', 'stem'],
    );
    expect(wrong).toEqual([]);
  });
});
