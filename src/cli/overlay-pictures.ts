import type { DensityLimits } from '../check/density/limits.js';
import type { SewnStitches } from '../check/density/sewn-stitches.js';
import { limitsAsked } from '../density-limits.js';
import { stopsInOrder } from '../design/design.js';
import { drawOverlays } from '../draw/overlays/overlay-picture.js';
import type { Shown } from '../draw/overlays/show.js';
import { workOfDressed } from '../draw/overlays/work-of-dressed.js';
import { workOfFile } from '../draw/overlays/work-of-file.js';
import type { Dressed } from '../dress.js';
import { type PictureOptions, stopsShown } from './picture-options.js';

/** What was asked to be shown of a dressed block, as SVG, by the limits of its dressing. */
export const dressedOverlays = (dressed: Dressed, options: PictureOptions, usual: Shown): string =>
  drawOverlays(
    workOfDressed(dressed, stopsShown(options, stopsInOrder(dressed.design).length)),
    options.show ?? new Set([usual]),
    limitsAsked(dressed.dressing.density),
  );

/** What was asked to be shown of a stitch file, as SVG. */
export const fileOverlays = (
  name: string,
  stitches: SewnStitches,
  options: PictureOptions,
  usual: Shown,
  limits: DensityLimits,
): string =>
  drawOverlays(
    workOfFile(name, stitches, stopsShown(options, stitches.stops.length)),
    options.show ?? new Set([usual]),
    limits,
  );
