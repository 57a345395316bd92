import { claimedCloth } from '../../../src/fit/band-polygon.js';
import { cutter } from '../../../src/fit/cloth.js';
import { craftFor } from '../../../src/needle/craft.js';
import { sewChains, Workbench } from '../../../src/needle/sew-chain.js';
import { chainsOf } from '../asks.js';
import type { Fitted } from './fitted.js';
import { type Cloth, clothOf, inflated, isOn } from './polygons.js';

/** Points of legs may lie this far outside, mm: a line that is cut may be passed by as much. */
const SLACK = 0.06;
/** Passes of a leg lie side by side, and holes that would be one are scattered: needle points may lie this far outside, mm. */
const BESIDE = 0.36;
/** Straight stitches go across the inside of a bend: hollows rounder than this are not theirs, mm. */
const HOLLOW = 4;

/** Treatments with thread outside of the cloth that they claimed, told by name. Polygons by Clipper (clipper2-ts). */
export function strays({ block, fits }: Fitted): string[] {
  const cut = cutter(block.map);
  const bench = new Workbench();
  return fits.flatMap(({ fit, claims }) => {
    const chains = chainsOf(fit);
    if (chains.length === 0) return [];
    const cloth = clothOf(claims.flatMap((claim) => claimedCloth(claim, cut)));
    const { xy } = sewChains(chains, craftFor('40'), bench).runs;
    const legs = chains.map(({ path, pathStart, from }) => path.subarray(0, 2 * pathStart[from.length]));
    const off =
      outside(legs, cloth, inflated(cloth, SLACK)) +
      outside([xy], cloth, inflated(inflated(cloth, BESIDE + HOLLOW), -HOLLOW));
    return off > 0 ? [`${block.name}: ${off} points of ${fit.stitch} on seam ${fit.seam}`] : [];
  });
}

/** How many points lie neither on a cloth nor on a wider one. */
function outside(lines: readonly Float64Array[], cloth: Cloth, wider: Cloth): number {
  let off = 0;
  for (const xy of lines) {
    for (let i = 0; i < xy.length; i += 2) {
      if (!isOn(cloth, xy[i], xy[i + 1]) && !isOn(wider, xy[i], xy[i + 1])) off++;
    }
  }
  return off;
}
