import type { Box } from '../../geometry/box.js';
import type { LegendPart } from './legend.js';

/** One thing that a picture shows: as drawn over what lies below, and what the legend says of it. */
export interface Overlay {
  readonly picture: string;
  /** what is to be read, over all else that lies there */
  readonly labels?: string;
  /** what no number may lie over, mm */
  readonly taken?: readonly Box[];
  readonly part: LegendPart;
}
