import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../src/fit/fit.js';
import { Known } from '../../../src/needle/graph/known.js';
import { measureLegs } from '../../../src/needle/legs.js';
import { routesOf, sewChains } from '../../../src/needle/sew-chain.js';
import { blanket, ChainMaker, craft, feather, fly, herringbone, ladder, ring, sprigs } from '../chains.js';

const chains: [string, (units: number, passes?: number) => Chain][] = [
  ['herringbone', herringbone],
  ['feather', feather],
  ['blanket', blanket],
  ['fly', fly],
  ['two rails', (units, passes = 3) => ladder(units, [passes, passes, passes])],
  ['ring', ring],
  ['sprigs', sprigs],
];

const cases = chains.flatMap(([name, make]) =>
  [1, 2, 3].flatMap((passes) =>
    [3, 4, 11].map((units) => [name, units, passes, make(units, passes)] as const),
  ),
);

/** Points at which two straight pieces cross, by their parameters; independent of the code's own orientation test. */
function cross(chain: Chain, a: number, b: number): boolean {
  const point = (i: number) => [chain.path[2 * i], chain.path[2 * i + 1]];
  for (let i = chain.pathStart[a] + 1; i < chain.pathStart[a + 1]; i++) {
    for (let j = chain.pathStart[b] + 1; j < chain.pathStart[b + 1]; j++) {
      const [p, q, r, s] = [point(i - 1), point(i), point(j - 1), point(j)];
      const det = (q[0] - p[0]) * (s[1] - r[1]) - (q[1] - p[1]) * (s[0] - r[0]);
      if (Math.abs(det) < 1e-12) continue;
      const t = ((r[0] - p[0]) * (s[1] - r[1]) - (r[1] - p[1]) * (s[0] - r[0])) / det;
      const u = ((r[0] - p[0]) * (q[1] - p[1]) - (r[1] - p[1]) * (q[0] - p[0])) / det;
      if (t > 1e-6 && t < 1 - 1e-6 && u > 1e-6 && u < 1 - 1e-6) return true;
    }
  }
  return false;
}

function countsOf(chain: Chain): Int32Array {
  const counts = new Int32Array(chain.from.length);
  for (const { trail } of routesOf(chain)) for (const step of trail) counts[step >> 1]++;
  return counts;
}

describe.each(cases)('the route over %s of %i units in %i passes', (_, units, __, chain) => {
  const routes = routesOf(chain);

  it('is a walk along legs without a break', () => {
    for (const { trail } of routes) {
      let at = -1;
      for (const step of trail) {
        const leg = step >> 1;
        if (at >= 0) expect(step & 1 ? chain.to[leg] : chain.from[leg]).toBe(at);
        at = step & 1 ? chain.from[leg] : chain.to[leg];
      }
    }
  });

  it('gives every leg at least the passes it asks', () => {
    countsOf(chain).forEach((count, leg) => {
      expect(count).toBeGreaterThanOrEqual(chain.passes[leg]);
    });
  });

  it('never falls back more than one repeat', () => {
    for (const { trail, ordered } of routes) {
      expect(ordered).toBe(true);
      let furthest = 0;
      for (const step of trail) {
        furthest = Math.max(furthest, chain.unit[step >> 1]);
        expect(chain.unit[step >> 1]).toBeGreaterThanOrEqual(furthest - 1);
      }
    }
  });

  it('sews the later leg last wherever two legs cross', () => {
    for (const { trail } of routes) {
      const last = new Map<number, number>();
      trail.forEach((step, i) => {
        last.set(step >> 1, i);
      });
      for (let a = 0; a < chain.from.length; a++) {
        for (let b = a + 1; b < chain.from.length; b++) {
          if (last.has(a) && last.has(b) && cross(chain, a, b))
            expect(last.get(b)).toBeGreaterThan(last.get(a)!);
        }
      }
    }
  });

  it('gives legs of one class equal passes in every repeat between the first and the last', () => {
    const counts = countsOf(chain);
    const byClass = new Map<number, Map<number, string>>();
    counts.forEach((count, leg) => {
      if (chain.kind[leg] === 'under') return;
      const own = byClass.get(chain.legClass[leg]) ?? new Map<number, string>();
      byClass.set(chain.legClass[leg], own);
      own.set(chain.unit[leg], `${own.get(chain.unit[leg]) ?? ''} ${count}`);
    });
    for (const own of byClass.values()) {
      const inner = [...own].filter(([unit]) => unit > 0 && unit < units - 1).map(([, text]) => text);
      expect(new Set(inner).size).toBe(1);
    }
  });

  it('accounts for the thread it adds', () => {
    const { length } = measureLegs(chain);
    let added = 0;
    countsOf(chain).forEach((count, leg) => {
      added += (count - chain.passes[leg]) * length[leg];
    });
    expect(routes.reduce((sum, route) => sum + route.addedMm, 0)).toBeCloseTo(added, 6);
  });
});

describe('the route', () => {
  it('works herringbone as the hand does: diagonal, pick-up, diagonal (Day and Buckle 1900, illus. 20 A)', () => {
    const chain = herringbone(4, 1);
    const [{ trail }] = routesOf(chain);
    // every leg once, in order, forward; the pick-up after the last diagonal leads nowhere and is left out
    expect(Array.from(trail)).toEqual(Array.from({ length: 15 }, (_, leg) => 2 * leg));
  });

  it('goes over detached parts one by one in order along the chain', () => {
    const routes = routesOf(sprigs(6));
    expect(routes).toHaveLength(6);
    routes.forEach(({ trail }, i) => {
      expect(new Set(Array.from(trail, (step) => sprigs(6).unit[step >> 1]))).toEqual(new Set([i]));
    });
  });

  it('costs nothing when every point is even already', () => {
    for (const route of routesOf(sprigs(3, 2))) expect(route.cost).toBe(0);
  });

  it('finds a way even where order cannot be kept, and says so: two long lines joined at one end only', () => {
    const maker = new ChainMaker();
    for (let i = 0; i < 6; i++) {
      maker
        .leg(i, 0, 'straight', 1, [
          [3 * i, 0],
          [3 * i + 3, 0],
        ])
        .leg(i, 1, 'straight', 1, [
          [3 * i, 4],
          [3 * i + 3, 4],
        ]);
    }
    const chain = maker
      .leg(5, 2, 'straight', 1, [
        [18, 0],
        [18, 4],
      ])
      .chain();
    const [route, ...rest] = routesOf(chain);
    expect(rest).toEqual([]);
    expect(route.ordered).toBe(false);
    expect(sewChains([herringbone(3), chain, chain], craft).unordered).toBe(2);
    expect(new Set(Array.from(route.trail, (step) => step >> 1)).size).toBe(13);
  });

  it('goes over a web of eight spokes and four rounds in one piece', () => {
    const maker = new ChainMaker();
    const at = (spoke: number, round: number): [number, number] => [
      3 * round * Math.cos((Math.PI * spoke) / 4),
      3 * round * Math.sin((Math.PI * spoke) / 4),
    ];
    for (let spoke = 0; spoke < 8; spoke++) {
      for (let round = 0; round < 4; round++) {
        maker.leg(0, 0, 'straight', 1, [at(spoke, round), at(spoke, round + 1)]);
        maker.leg(0, 1, 'straight', 1, [at(spoke, round + 1), at(spoke + 1, round + 1)]);
      }
    }
    const chain = maker.chain();
    const routes = routesOf(chain);
    expect(routes).toHaveLength(1);
    expect(new Set(Array.from(routes[0].trail, (step) => step >> 1)).size).toBe(64);
    // the eight outer points are odd: three pairs of neighbors are joined along the outer round, the fourth are the ends
    const side = 2 * 12 * Math.sin(Math.PI / 8);
    expect(routes[0].addedMm).toBeCloseTo(3 * side, 1);
  });

  it('is searched once for each kind of unit, however long the chain', () => {
    for (const [, make] of chains) {
      const work = (units: number) => {
        const known = new Known();
        const chain = make(units);
        routesOf(chain, measureLegs(chain), known);
        return [known.shapes.length, known.patterns.length, known.following.size, known.crossings.length];
      };
      expect(work(400)).toEqual(work(20));
    }
  });
});
