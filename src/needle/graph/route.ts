import type { Chain } from '../../fit/fit.js';
import { uint8s } from '../../geometry/flat.js';
import { crossingPairs } from './crossings.js';
import { eulerTrail } from './hierholzer.js';
import { type Known, Scratch } from './known.js';
import { layOut } from './lay-out.js';
import type { Part } from './part.js';
import { leastPasses, type Passes } from './passes.js';
import type { Layout } from './shape.js';
import { OVER_FINISHED } from './stage.js';
import { type StagedTrail, stagedTrails, type Trail } from './trail.js';
import { shortJumps } from './visits.js';

/** The needle's way over one connected part, and what it adds to the passes asked. */
export interface Route {
  readonly trail: Trail;
  /** whether it keeps to the order in which a hand works: no walk back past the repeat before, the later leg on top where two cross */
  readonly ordered: boolean;
  /** thread added, mm */
  readonly addedMm: number;
  /** the same with a mm of a leg that is seen counted three times */
  readonly cost: number;
}

/** Measures of a chain's legs, each taken once. */
export interface LegMeasures {
  /** mm */
  readonly length: Float64Array;
  /** x0 y0 x1 y1 of each leg's path */
  readonly boxes: Float64Array;
}

/** How a part is sewn, whatever its place in the chain. */
export interface Sewing {
  readonly passes: Passes;
  /** ways that cost the same, the hand's own first; legs by their place in the part */
  readonly ways: readonly Trail[];
  /** see Route */
  readonly ordered: boolean;
}

/** The routes over the parts of a chain, in order along it. */
export function routesOver(
  chain: Chain,
  parts: readonly Part[],
  measures: LegMeasures,
  known: Known,
): Route[] {
  const scratch = new Scratch(chain.nodes.length >> 1);
  const all = parts.length > 1;
  const sewings = parts.map((part) => sewingOf(chain, part, measures, known, scratch, all));
  const chosen = shortJumps(
    chain,
    parts.map(({ legs }, i) => ({ legs, ways: sewings[i].ways })),
  );
  return parts.map((part, i) => {
    const { passes, ways, ordered } = sewings[i];
    const steps = ways[chosen[i]];
    return {
      trail: steps.map((step) => 2 * part.legs[step >> 1] + (step & 1)),
      ordered,
      addedMm: addedBy(chain, part, passes, measures.length),
      cost: passes.cost,
    };
  });
}

/**
 * Finds how a part is sewn. Looks come first: equal passes in every repeat, the hand's order at crossings, no walk
 * back past the repeat before. Where no trail can keep all that, it keeps what it can; a trail there always is, since
 * every leg sewn twice gives one.
 */
function sewingOf(
  chain: Chain,
  part: Part,
  measures: LegMeasures,
  known: Known,
  scratch: Scratch,
  all: boolean,
): Sewing {
  const layout = layOut(chain, part, measures.length, known, scratch);
  const crossings = crossingPairs(chain, part, measures.boxes, known);
  const figure = layout.shapeOf.length === 1;
  const kind = layout.shapeOf[0] * 2 ** 20 + crossings[0];
  const like = figure ? scratch.figures.get(kind) : undefined;
  if (like) return like;
  const sewing = bestTrails(chain, part, layout, crossings, known, scratch, all);
  if (figure) scratch.figures.set(kind, sewing);
  return sewing;
}

function bestTrails(
  chain: Chain,
  part: Part,
  layout: Layout,
  crossings: Int32Array,
  known: Known,
  scratch: Scratch,
  all: boolean,
): Sewing {
  // in a single unit, through means anywhere, with fewer states
  const least = layout.shapeOf.length === 1 ? 'anywhere' : 'through';
  for (const even of [true, false]) {
    let best: { passes: Passes; found: readonly StagedTrail[] } | null = null;
    // the ends that cost least may lie where the hand's order cannot be kept; then those of its first and last leg
    for (const ends of [least, 'ordered', 'closed'] as const) {
      const passes = leastPasses(layout, ends, even, known);
      if (!passes) continue;
      const found = stagedTrails(chain, part, layout, passes, crossings, known, scratch, all);
      if (found.length > 0 && (!best || found[0].offense < best.found[0].offense)) best = { passes, found };
      if (best && best.found[0].offense < OVER_FINISHED) break;
    }
    if (best) {
      const ways = best.found.map(({ steps }) => steps);
      return { passes: best.passes, ways, ordered: !best.found[0].isAgainst };
    }
  }
  const passes = leastPasses(layout, 'anywhere', false, known) ?? doubled(layout);
  return { passes, ways: [plainTrail(chain, part, layout, passes)], ordered: false };
}

function addedBy(chain: Chain, part: Part, passes: Passes, length: Float64Array): number {
  let added = 0;
  for (let g = 0; g < passes.of.length; g++) {
    const sewn = passes.patterns[passes.of[g]];
    for (let i = 0; i < sewn.length; i++) {
      const leg = part.legs[part.start[g] + i];
      // a knot is worked once, however many passes it asks
      if (chain.from[leg] !== chain.to[leg] && sewn[i] > chain.passes[leg])
        added += (sewn[i] - chain.passes[leg]) * length[leg];
    }
  }
  return added;
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
  const counts = uint8s(part.legs.length);
  layout.shapeOf.forEach((_, g) => {
    counts.set(passes.patterns[passes.of[g]], part.start[g]);
  });
  const pick = (of: Int32Array) => Int32Array.from(part.legs, (leg) => of[leg]);
  const trail = eulerTrail(chain.nodes.length >> 1, pick(chain.from), pick(chain.to), counts);
  if (!trail) throw new Error('a connected part with even passes has an Euler trail');
  return trail;
}
