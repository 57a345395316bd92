import type { Block } from './block/block.js';
import type { Design } from './design/design.js';
import type { Finding } from './finding.js';
import type { SeamFit } from './fit/fit.js';
import type { Dressing } from './formats/dressing.js';
import type { Runs } from './needle/run.js';

/** Everything the main job makes, step by step, so that pictures, sheets and tests can show each of them. */
export interface Dressed {
  readonly block: Block;
  readonly dressing: Dressing;
  readonly rows: readonly DressedRow[];
  readonly design: Design;
  /** worst first */
  readonly findings: readonly Finding[];
}

/** One stitch along one line, as fitted and as sewn. */
export interface DressedRow {
  /** indices into dressing.treatments and into its rows */
  readonly treatment: number;
  readonly row: number;
  readonly fit: SeamFit;
  readonly runs: Runs;
}
