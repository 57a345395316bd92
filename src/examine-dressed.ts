import type { CoveredBand } from './check/density/band-cover.js';
import type { Call } from './check/density/tile-crew.js';
import { type Examined, examineDesign } from './check/examine.js';
import { limitsAsked } from './density-limits.js';
import { stopsInOrder } from './design/design.js';
import type { Dressed } from './dress.js';

/** A look at all stitches of a dressed block, its treatments' bands included, by the limits of its dressing. */
export function examineDressed({ design, dressing, lines }: Dressed, call?: Call): Examined {
  const stops = stopsInOrder(design);
  const bands = lines.map(({ fit }): CoveredBand => {
    // a stop that several lines share says nothing of one of them
    const ofLine = stops.flatMap((stop, i) =>
      stop?.seams.length === 1 && stop.seams[0] === fit.seam ? [i] : [],
    );
    return { seam: fit.seam, stops: ofLine, areaMm2: fit.bandMm2 };
  });
  return examineDesign(design, bands, limitsAsked(dressing.density), call);
}
