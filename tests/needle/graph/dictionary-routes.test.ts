import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chain } from '../../../src/fit/fit.js';
import type { Route } from '../../../src/needle/graph/route.js';
import { routesOf } from '../../../src/needle/sew-chain.js';
import { anyOrnament, anyStitch } from '../worked.js';

/** Where two legs cross between their ends: by the side on which the ends of one's pieces lie of the other's. */
function cross(chain: Chain, a: number, b: number): boolean {
  const point = (i: number) => [chain.path[2 * i], chain.path[2 * i + 1]] as const;
  for (let i = chain.pathStart[a] + 1; i < chain.pathStart[a + 1]; i++) {
    for (let j = chain.pathStart[b] + 1; j < chain.pathStart[b + 1]; j++) {
      const [p, q, r, s] = [point(i - 1), point(i), point(j - 1), point(j)];
      const det = (q[0] - p[0]) * (s[1] - r[1]) - (q[1] - p[1]) * (s[0] - r[0]);
      if (Math.abs(det) < 1e-9) continue;
      const t = ((r[0] - p[0]) * (s[1] - r[1]) - (r[1] - p[1]) * (s[0] - r[0])) / det;
      const u = ((r[0] - p[0]) * (q[1] - p[1]) - (r[1] - p[1]) * (q[0] - p[0])) / det;
      if (t > 1e-3 && t < 1 - 1e-3 && u > 1e-3 && u < 1 - 1e-3) return true;
    }
  }
  return false;
}

interface Routed {
  readonly name: string;
  readonly chain: Chain;
  readonly routes: readonly Route[];
}
const routed = (works: ReturnType<typeof fc.sample<{ name: string; chains: readonly Chain[] }>>): Routed[] =>
  works.flatMap(({ name, chains }) => chains.map((chain) => ({ name, chain, routes: routesOf(chain) })));

/** Three passes are usual; with other numbers a stitch may find no way, which a finding tells. */
const stitches = routed(fc.sample(anyStitch(fc.constant(3)), 150));
const all = [...stitches, ...routed(fc.sample(anyStitch(), 150)), ...routed(fc.sample(anyOrnament, 40))];

describe('the needle over any stitch or ornament, at any size', () => {
  test('finds a way in the order of the hand', () => {
    const wrong = stitches.filter(({ routes }) => routes.some(({ ordered }) => !ordered));
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });

  test('never falls back more than one repeat', () => {
    const wrong = stitches.filter(({ chain, routes }) =>
      routes.some(({ trail }) => {
        let furthest = 0;
        return trail.some((step) => {
          furthest = Math.max(furthest, chain.unit[step >> 1]);
          return chain.unit[step >> 1] < furthest - 1;
        });
      }),
    );
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });

  test('sews each leg as often as it is asked, or more', () => {
    const wrong = all.filter(({ chain, routes }) => {
      const counts = countsOf(chain, routes);
      return counts.some((count, leg) => count < (chain.kind[leg] === 'knot' ? 1 : chain.passes[leg]));
    });
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });

  test('sews like legs of like repeats equally often, between the first repeat and the last', () => {
    const wrong = stitches.flatMap(({ name, chain, routes }) => {
      if (routes.length > 1) return [];
      const counts = countsOf(chain, routes);
      const classes = new Map<number, Map<number, string>>();
      counts.forEach((count, leg) => {
        if (chain.kind[leg] === 'under') return;
        const own = classes.get(chain.legClass[leg]) ?? new Map<number, string>();
        classes.set(
          chain.legClass[leg],
          own.set(chain.unit[leg], `${own.get(chain.unit[leg]) ?? ''} ${count}`),
        );
      });
      return [...classes.values()].flatMap((units) => {
        const inner = [...units]
          .filter(([unit]) => unit > 0 && unit < chain.units - 1)
          .map(([, text]) => text);
        return new Set(inner).size > 1 ? [`${name}: ${[...new Set(inner)]}`] : [];
      });
    });
    expect(wrong).toEqual([]);
  });

  test('lays the leg that the hand works last on top, wherever two cross in a repeat or the next, or says that it does not', () => {
    const wrong = all.flatMap(({ name, chain, routes }) =>
      routes.flatMap(({ trail, ordered }) => {
        if (!ordered) return [];
        const last = new Map<number, number>();
        trail.forEach((step, i) => {
          last.set(step >> 1, i);
        });
        const legs = [...last.keys()].filter((leg) => chain.kind[leg] !== 'under').sort((a, b) => a - b);
        return legs.flatMap((b, i) =>
          legs
            .slice(0, i)
            .filter(
              (a) => chain.unit[b] - chain.unit[a] <= 1 && last.get(a)! > last.get(b)! && cross(chain, a, b),
            )
            .map((a) => `${name}: ${a} over ${b}`),
        );
      }),
    );
    expect(wrong.slice(0, 5)).toEqual([]);
  });
});

function countsOf(chain: Chain, routes: readonly Route[]): number[] {
  const counts = new Array<number>(chain.from.length).fill(0);
  for (const { trail } of routes) for (const step of trail) counts[step >> 1]++;
  return counts;
}
