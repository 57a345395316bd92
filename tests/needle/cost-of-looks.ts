import type { Chain } from '../../src/fit/fit.js';
import { Known, Scratch } from '../../src/needle/graph/known.js';
import { layOut } from '../../src/needle/graph/lay-out.js';
import { partsOf } from '../../src/needle/graph/part.js';
import { routesOver } from '../../src/needle/graph/route.js';
import { measureLegs } from '../../src/needle/legs.js';
import { leastCost } from './graph/least-cost.js';

/**
 * What a chain's routes cost for even repeats and the order of a hand's work: mm of thread beyond the least of any trails that
 * give every leg its passes, wherever they start and however often they walk back. A mm of a leg that is seen counts three times.
 * The search for the least takes as long as that for the routes, so it is made when asked for alone.
 */
export function costOfLooks(chain: Chain, known: Known = new Known()): number {
  const legs = measureLegs(chain);
  const parts = partsOf(chain);
  const scratch = new Scratch(chain.nodes.length >> 1);
  let sum = 0;
  routesOver(chain, parts, legs, known).forEach(({ cost }, i) => {
    if (cost === 0) return;
    const layout = layOut(chain, parts[i], legs.length, known, scratch);
    sum += Math.max(0, cost - leastCost(layout, 'anywhere', known));
  });
  return sum;
}
