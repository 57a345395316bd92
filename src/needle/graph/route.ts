import type { Chain } from '../../fit/fit.js';
import { crossingPairs } from './crossings.js';
import { eulerTrail } from './hierholzer.js';
import type { Known, Scratch } from './known.js';
import { layOut } from './lay-out.js';
import type { Part } from './part.js';
import { leastCost, leastPasses, type Passes } from './passes.js';
import type { Layout } from './shape.js';
import { OVER_FINISHED } from './stage.js';
import { stagedTrail, type Trail } from './trail.js';

/** The needle's way over one connected part, and what it adds to the passes asked. */
export interface Route {
  readonly trail: Trail;
  /** whether it keeps to the order in which a hand works: no walk back past the repeat before */
  readonly ordered: boolean;
  /** thread added, mm */
  readonly addedMm: number;
  /** the same with a mm of a leg that is seen counted three times */
  readonly cost: number;
  /** the least cost of any one trail, wherever it starts and however often it walks back */
  readonly leastCost: number;
}

/** Measures of a chain's legs, each taken once. */
export interface LegMeasures {
  /** mm */
  readonly length: Float64Array;
  /** x0 y0 x1 y1 of each leg's path */
  readonly boxes: Float64Array;
}

/**
 * Finds the route of a part. Looks come first: equal passes in every repeat, the hand's order at crossings, no walk
 * back past the repeat before. Where no trail can keep all that, it keeps what it can; a trail there always is, since
 * every leg sewn twice gives one.
 */
export function routeOf(
  chain: Chain,
  part: Part,
  measures: LegMeasures,
  known: Known,
  scratch: Scratch,
): Route {
  const layout = layOut(chain, part, measures.length, known, scratch);
  const crossings = crossingPairs(chain, part, measures.boxes, known);
  const single = layout.shapeOf.length === 1;
  const kind = layout.shapeOf[0] * 2 ** 20 + crossings[0];
  const figure = single ? scratch.figures.get(kind) : undefined;
  if (figure) {
    const trail = figure.steps.map((step) => 2 * part.legs[step >> 1] + (step & 1));
    return account(layout, part, measures, { ...figure, trail });
  }
  const sewing = bestTrail(chain, part, layout, crossings, known, scratch);
  const { passes, trail, ordered } = sewing;
  const least = passes.cost === 0 ? 0 : leastCost(layout, 'anywhere', known);
  if (single) {
    const place = new Map(Array.from(part.legs, (leg, i) => [leg, i]));
    const steps = trail.map((step) => 2 * place.get(step >> 1)! + (step & 1));
    scratch.figures.set(kind, { steps, passes, ordered, leastCost: least });
  }
  return account(layout, part, measures, { ...sewing, leastCost: least });
}

interface Sewing {
  readonly passes: Passes;
  readonly trail: Trail;
  readonly ordered: boolean;
}

function bestTrail(
  chain: Chain,
  part: Part,
  layout: Layout,
  crossings: Int32Array,
  known: Known,
  scratch: Scratch,
): Sewing {
  // in a single unit, through means anywhere, with fewer states
  const least = layout.shapeOf.length === 1 ? 'anywhere' : 'through';
  for (const even of [true, false]) {
    let best: (Sewing & { offense: number }) | null = null;
    // the ends that cost least may lie where the hand's order cannot be kept; then those of its first and last leg
    for (const ends of [least, 'ordered', 'closed'] as const) {
      const passes = leastPasses(layout, ends, even, known);
      const found = passes && stagedTrail(chain, part, layout, passes, crossings, known, scratch);
      if (passes && found && (!best || found.offense < best.offense))
        best = { passes, ordered: true, ...found };
      if (best && best.offense < OVER_FINISHED) return best;
    }
    if (best) return best;
  }
  const passes = leastPasses(layout, 'anywhere', false, known) ?? doubled(layout);
  return { passes, trail: plainTrail(chain, part, layout, passes), ordered: false };
}

function account(
  layout: Layout,
  part: Part,
  measures: LegMeasures,
  { passes, trail, ordered, leastCost }: Sewing & { readonly leastCost: number },
): Route {
  let addedMm = 0;
  layout.shapeOf.forEach((id, g) => {
    const { asked } = layout.shapes[id];
    const sewn = passes.patterns[passes.of[g]];
    for (let i = 0; i < sewn.length; i++) {
      if (sewn[i] > asked[i]) addedMm += (sewn[i] - asked[i]) * measures.length[part.legs[part.start[g] + i]];
    }
  });
  return { trail, ordered, addedMm, cost: passes.cost, leastCost };
}

/** Every leg an even number of times: always one closed trail. */
function doubled(layout: Layout): Passes {
  let cost = 0;
  const patterns = Array.from(layout.shapeOf, (id) => {
    const { asked, from, to, price } = layout.shapes[id];
    return Uint8Array.from(asked, (count, leg) => {
      if (from[leg] === to[leg]) return count;
      const even = count === 0 ? 2 : count + (count & 1);
      cost += (even - count) * layout.lengths.get(id)![leg] * price[leg];
      return even;
    });
  });
  return { of: Int32Array.from(patterns.keys()), patterns, cost };
}

function plainTrail(chain: Chain, part: Part, layout: Layout, passes: Passes): Trail {
  const counts = new Uint8Array(part.legs.length);
  layout.shapeOf.forEach((_, g) => {
    counts.set(passes.patterns[passes.of[g]], part.start[g]);
  });
  const pick = (of: Int32Array) => Int32Array.from(part.legs, (leg) => of[leg]);
  const trail = eulerTrail(chain.nodes.length >> 1, pick(chain.from), pick(chain.to), counts);
  if (!trail) throw new Error('a connected part with even passes has an Euler trail');
  return trail.map((step) => 2 * part.legs[step >> 1] + (step & 1));
}
