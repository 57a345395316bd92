import { threadContrasts } from '../../check/contrast/thread-contrast.js';
import { onlyStops } from '../../check/density/runs-of-stop.js';
import { stitchesOf } from '../../check/density/sewn-stitches.js';
import { stopsInOrder } from '../../design/design.js';
import type { Dressed } from '../../dress.js';
import { sewnThreads } from '../../thread-look.js';
import { dressedLayers, pictureFrame } from '../dressed-picture.js';
import type { BareStretch, ShownWork } from './shown-work.js';

/**
 * A dressed block as overlays are drawn from it.
 * @param wanted color stops, from 1, that are sewn; all when not given
 */
export function workOfDressed(dressed: Dressed, wanted?: ReadonlySet<number>): ShownWork {
  const { block, design, findings } = dressed;
  const stops = stopsInOrder(design);
  const sewn = wanted ?? new Set(stops.map((_, i) => i + 1));
  return {
    name: block.name,
    map: block.map,
    frame: pictureFrame(block, design),
    stitches: onlyStops(stitchesOf(design), sewn),
    stops: stops.map((stop, i) => ({
      title: stop ? stop.title : 'came with the block',
      isShown: sewn.has(i + 1),
    })),
    bare: findings.flatMap(({ seam, along }): BareStretch[] =>
      seam !== undefined && along ? [{ seam, from: along[0], to: along[1] }] : [],
    ),
    contrasts: () => {
      const threads = sewnThreads(dressed);
      return threadContrasts(block.map, threads).map(({ of, places }) => ({ ...threads[of], places }));
    },
    thread: () => dressedLayers(dressed, sewn).join(''),
  };
}
