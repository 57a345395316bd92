import { keptAreas } from '../../src/asked/keep-clear.js';
import { placedDressing, unplacedDressing } from '../../src/asked/placed-dressing.js';
import type { Block } from '../../src/block/block.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { type MixOptions, mixDressing } from '../../src/harmony/mix.js';
import { placedWork, placementAsked } from '../../src/placed.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import type { Opened } from './messages.js';

/** The dressing mixed from the library; what is pinned stays. What suits a seam goes by how long it is to be. */
export function mixAgain(block: Block, dressing: Dressing, library: Dictionary, options: MixOptions): Opened {
  const placement = placementAsked(block.map, dressing);
  const placed = placedWork(block, dressing);
  const mixed = mixDressing(placed.block.map, placedDressing(dressing, placement), library, {
    ...options,
    keepClear: keptAreas(placed.block, placed.dressing),
  });
  return {
    dressing: unplacedDressing(mixed.dressing, placement),
    roles: null,
    why: [...mixed.why],
    findings: mixed.findings,
  };
}
