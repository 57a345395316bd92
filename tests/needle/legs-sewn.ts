import type { Chain } from '../../src/fit/fit.js';
import { holesFor } from '../../src/needle/holes.js';
import { measureLegs } from '../../src/needle/legs.js';
import { NeedlePoints } from '../../src/needle/needle-points.js';
import type { Craft } from '../../src/needle/run.js';
import { Samples } from '../../src/needle/samples.js';
import { routesOf } from '../../src/needle/sew-chain.js';
import { sewTrail } from '../../src/needle/sew-trail.js';

export type Spot = readonly [number, number];

/** One pass over a leg, as it is sewn. */
export interface LegSewn {
  readonly leg: number;
  readonly back: boolean;
  /** which pass this is, from 0, and of how many */
  readonly turn: number;
  readonly of: number;
  /** from the hole in which the pass before ended to the hole in which this one ends */
  readonly points: readonly Spot[];
}

/**
 * Every pass of a chain but the last of each run, before ties. The needle's place is noted whenever it takes up the next
 * leg, which is when it looks up how long that one is.
 */
export function legsSewn(chain: Chain, craft: Craft): LegSewn[][] {
  const legs = measureLegs(chain);
  const routes = routesOf(chain, legs);
  const trails = routes.map(({ trail }) => trail);
  const holes = holesFor(chain, trails, legs, craft);
  const points = new NeedlePoints();
  const samples = new Samples();
  samples.begin(chain);
  return trails.map((trail) => {
    const sewn: LegSewn[] = [];
    const turns = new Map<number, number>();
    let from = -1;
    let step = -1;
    const watched = {
      ...legs,
      get length() {
        if (step >= 0) {
          const leg = trail[step] >> 1;
          const turn = turns.get(leg) ?? 0;
          turns.set(leg, turn + 1);
          const spots: Spot[] = [];
          for (let i = Math.max(from, points.runStart); i < points.count; i++)
            spots.push([points.xy[2 * i], points.xy[2 * i + 1]]);
          sewn.push({ leg, back: (trail[step] & 1) === 1, turn, of: holes.whole[leg], points: spots });
        }
        from = points.count - 1;
        step++;
        return legs.length;
      },
    };
    sewTrail(points, chain, trail, watched, holes, craft, samples);
    return sewn;
  });
}
