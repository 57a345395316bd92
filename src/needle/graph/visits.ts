import type { Chain } from '../../fit/fit.js';
import type { Trail } from './trail.js';

/** Ways over one of several parts, of which one is to be taken. */
export interface Visit {
  /** the part's legs in the chain */
  readonly legs: Int32Array;
  /** legs by their place in the part */
  readonly ways: readonly Trail[];
}

/**
 * For each part, visited in order, the way over it by which the jumps from part to part are shortest in all; the
 * first way among equals. Exact, by dynamic programming over the parts; linear in their number.
 */
export function shortJumps(chain: Chain, visits: readonly Visit[]): Int32Array {
  const chosen = new Int32Array(visits.length);
  if (visits.every(({ ways }) => ways.length === 1)) return chosen;
  const cameFrom: number[][] = [];
  let costs: number[] = [];
  visits.forEach((visit, i) => {
    const before = costs;
    const from: number[] = [];
    costs = visit.ways.map((way, w) => {
      from[w] = 0;
      if (i === 0) return 0;
      const start = startOf(chain, visit.legs, way);
      let least = Number.POSITIVE_INFINITY;
      visits[i - 1].ways.forEach((earlier, e) => {
        const cost = before[e] + jump(chain, endOf(chain, visits[i - 1].legs, earlier), start);
        if (cost >= least - 1e-9) return;
        least = cost;
        from[w] = e;
      });
      return least;
    });
    cameFrom.push(from);
  });
  let way = 0;
  costs.forEach((cost, w) => {
    if (cost < costs[way] - 1e-9) way = w;
  });
  for (let i = visits.length - 1; i >= 0; i--) {
    chosen[i] = way;
    way = cameFrom[i][way];
  }
  return chosen;
}

function startOf({ from, to }: Chain, legs: Int32Array, way: Trail): number {
  const leg = legs[way[0] >> 1];
  return way[0] & 1 ? to[leg] : from[leg];
}

function endOf({ from, to }: Chain, legs: Int32Array, way: Trail): number {
  const last = way[way.length - 1];
  const leg = legs[last >> 1];
  return last & 1 ? from[leg] : to[leg];
}

function jump({ nodes }: Chain, a: number, b: number): number {
  const dx = nodes[2 * b] - nodes[2 * a];
  const dy = nodes[2 * b + 1] - nodes[2 * a + 1];
  return Math.sqrt(dx * dx + dy * dy);
}
