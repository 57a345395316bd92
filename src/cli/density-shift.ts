import type { MessagePort } from 'node:worker_threads';
import type { SewnStitches } from '../check/density/sewn-stitches.js';
import type { TileCounts } from '../check/density/tile-counts.js';
import type { TileStitches } from '../check/density/tiles.js';

/** Where the second thread of a crew is to stand. */
export interface Post {
  /** where it gets its shift, and tells what it has counted of the stops */
  readonly port: MessagePort;
  /** at NEXT the tile that nobody counts yet, at STATE how far the second thread is; both threads see it */
  readonly shared: Int32Array;
}

/** What it counts: stitches and cells in memory that both see. */
export interface Shift {
  readonly sewn: SewnStitches;
  readonly tiles: readonly TileStitches[];
  readonly counts: TileCounts;
}

export const NEXT = 0;
export const STATE = 1;

/** States of the second thread: it has not come yet, counts, has told what it counted, or came when all was counted. */
export const AWAITED = 0;
export const AT_WORK = 1;
export const DONE = 2;
export const TOO_LATE = 3;

/** The tile that nobody counts yet, taken by who asks. */
export const nextTile = (shared: Int32Array) => (): number => Atomics.add(shared, NEXT, 1);
