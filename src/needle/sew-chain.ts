import type { Chain } from '../fit/fit.js';
import { Known } from './graph/known.js';
import { partsOf } from './graph/part.js';
import { type Route, routesOver } from './graph/route.js';
import { holesFor } from './holes.js';
import { type Legs, measureLegs } from './legs.js';
import { NeedlePoints } from './needle-points.js';
import type { Craft, Runs } from './run.js';
import { Samples } from './samples.js';
import { sewTrail } from './sew-trail.js';

/** Chains as they are sewn. */
export interface Sewn {
  /** one run for each connected part, in order along the chains; between runs the machine jumps */
  readonly runs: Runs;
  /** thread sewn beyond the passes asked, mm along the legs */
  readonly addedMm: number;
  /** connected parts in which no way keeps to the order of a hand's work, and which are sewn along any that covers them */
  readonly unordered: number;
}

/** Sews one chain: every leg gets at least the passes it asks, each connected part in one run, tied in and off. */
export function sewChain(chain: Chain, craft: Craft): Sewn {
  return sewChains([chain], craft);
}

/** What many calls may share, so that what recurs is worked out once; it changes nothing but the time they take. */
export class Workbench {
  readonly known = new Known();
  readonly points = new NeedlePoints();
  readonly samples = new Samples();
}

/** Sews chains one after another, in order. */
export function sewChains(
  chains: readonly Chain[],
  craft: Craft,
  { known, points, samples }: Workbench = new Workbench(),
): Sewn {
  points.begin();
  let addedMm = 0;
  let unordered = 0;
  for (const chain of chains) {
    const legs = measureLegs(chain);
    const routes = routesOf(chain, legs, known);
    const trails = routes.map((route) => route.trail);
    samples.begin(chain);
    const holes = holesFor(chain, trails, legs, craft);
    for (const route of routes) {
      sewTrail(points, chain, route.trail, legs, holes, craft, samples);
      addedMm += route.addedMm;
      if (!route.ordered) unordered++;
    }
  }
  return { runs: points.runs(), addedMm, unordered };
}

/** The routes over the connected parts of a chain, in order along it. */
export function routesOf(chain: Chain, legs: Legs = measureLegs(chain), known: Known = new Known()): Route[] {
  return routesOver(chain, partsOf(chain), legs, known);
}
