import { type DensityLimits, LIMITS, type Limit } from './check/density/limits.js';
import type { DensityAsked, LimitAsked } from './formats/density-asked.js';

/** The limits that a piece of work is measured by: its own, and for what it does not say those of its cloth. */
export function limitsAsked({ cloth = 'firm', ...own }: DensityAsked = {}): DensityLimits {
  const usual = LIMITS[cloth];
  const limit = (asked: LimitAsked | undefined, otherwise: Limit): Limit =>
    asked ? { warning: asked[0], error: asked[1] } : otherwise;
  return {
    holes: limit(own.holes, usual.holes),
    layers: limit(own.layers, usual.layers),
    inOneHole: limit(own.inOneHole, usual.inOneHole),
    cover: own.cover ?? usual.cover,
  };
}
