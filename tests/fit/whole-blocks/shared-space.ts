import { bareSeam } from '../../../src/check/bare-seam.js';
import { claimedCloth } from '../../../src/fit/band-polygon.js';
import { cutter } from '../../../src/fit/cloth.js';
import { rowsOf, wholeReach } from '../../../src/fit/rows.js';
import type { LegKind } from '../../../src/stitches/stitch.js';
import { chainsOf } from '../asks.js';
import { legLines, nearest } from './distances.js';
import type { Fitted } from './fitted.js';
import { clothOf, sharedArea } from './polygons.js';

/** Bands of different treatments share no more than this, mm2. */
const MOST_SHARED = 0.001;
/** What is raised keeps this far from thread that is sewn over it, mm. */
const CLEAR = 1;

/** Pairs of treatments whose bands share cloth, told by name. Areas by Clipper (clipper2-ts). */
export function overlaps({ block, fits }: Fitted): string[] {
  const cut = cutter(block.map);
  const cloths = fits.map(({ claims }) => clothOf(claims.flatMap((claim) => claimedCloth(claim, cut))));
  return fits.flatMap((one, i) =>
    fits.slice(i + 1).flatMap((other, k) => {
      const area = sharedArea(cloths[i], cloths[i + 1 + k]);
      if (area <= MOST_SHARED) return [];
      return [`${block.name}: seams ${one.fit.seam} and ${other.fit.seam} share ${area.toFixed(3)} mm2`];
    }),
  );
}

const RAISED: ReadonlySet<LegKind> = new Set<LegKind>(['loop', 'knot', 'petal', 'cord']);

/** Raised figures too near to thread that is sewn over them, told by name. Distances by JTS (jsts). */
export function lumps({ block, fits }: Fitted): string[] {
  return fits.flatMap((line) =>
    line.tucksUnder.flatMap((seam) => {
      const over = fits.find(({ fit }) => fit.seam === seam)!;
      const distance = nearest(
        legLines(chainsOf(over.fit), () => true),
        CLEAR,
      );
      const raised = legLines(chainsOf(line.fit), (kind) => RAISED.has(kind));
      const near = raised.filter((leg) => distance(leg) < CLEAR);
      return near.length ? [`${block.name}: ${near.length} legs of seam ${line.fit.seam} under ${seam}`] : [];
    }),
  );
}

/**
 * Stretches of dressed seams longer than 3 mm that have no thread as near as the treatment reaches, or as half a repeat
 * is long: single figures stand apart.
 */
export function bareStretches({ block, asks, fits }: Fitted): string[] {
  const threads = fits.flatMap(({ fit }) =>
    chainsOf(fit).map(({ path, pathStart }) => ({ xy: path, start: pathStart })),
  );
  const lines = asks.map((ask, i) => {
    const scale = fits[i].fit.scale ?? 1;
    const repeat = ask.sized.repeat * scale;
    const { left, right } = wholeReach(rowsOf(ask, false), scale, repeat);
    return { seam: ask.seam, reach: Math.max(left, right, repeat / 2), short: false };
  });
  return bareSeam(block.map, lines, threads).map(({ message }) => `${block.name}, ${message}`);
}
