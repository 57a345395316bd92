import type { Runs } from '../needle/run.js';

/** Color stops in the order they are sewn. Stops that came with the block stay raw records and are not touched. */
export interface Design {
  /** stitch records (three bytes each) that came with the block and stay before, and after, the new stops */
  readonly before: ExistingPart | null;
  readonly after: ExistingPart | null;
  readonly stops: readonly Stop[];
  /** mm from the block's frame to the stitch file's origin: file position = frame position + origin, then y up */
  readonly origin: readonly [number, number];
  readonly name: string;
}

/** An unbroken run of records of the original file. */
export interface ExistingPart {
  readonly records: Uint8Array;
  /** how many color stops it holds */
  readonly stops: number;
}

export type StopKind = 'existing' | 'treatment' | 'accent' | 'ornament' | 'edge';

export interface Stop {
  readonly title: string;
  readonly kind: StopKind;
  readonly seams: readonly (number | 'outline')[];
  readonly thread: Thread;
  readonly runs: Runs;
}

export interface Thread {
  readonly name: string;
  /** '#rrggbb' */
  readonly hex: string;
  /** ticket number: "No. 40" */
  readonly weight: string;
}
