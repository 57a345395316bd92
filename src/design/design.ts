import type { Runs } from '../needle/run.js';

/** Color stops in the order they are sewn. Stops that came with the block stay raw records and are not touched. */
export interface Design {
  /** stitch records (three bytes each) that came with the block and stay before, and after, the new stops */
  readonly before: ExistingPart | null;
  readonly after: ExistingPart | null;
  readonly stops: readonly Stop[];
  /** how many of the last new stops are sewn behind `after`: edges go over the edge that came with the block */
  readonly late?: number;
  /**
   * where the frame is brought before anything is sewn, so that the file reaches as far: left, below, right and above of the
   * start, in steps, y up
   */
  readonly reach?: readonly [number, number, number, number];
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

/** What stands at each color stop of the file, in the order of the machine; null for those that came with the block. */
export function stopsInOrder({ before, after, stops, late = 0 }: Design): (Stop | null)[] {
  const cut = stops.length - late;
  const came = (part: ExistingPart | null) => Array<null>(part?.stops ?? 0).fill(null);
  return [...came(before), ...stops.slice(0, cut), ...came(after), ...stops.slice(cut)];
}

export type StopKind =
  | 'existing'
  | 'placement'
  | 'basting'
  | 'alignment'
  | 'treatment'
  | 'accent'
  | 'ornament'
  | 'edge';

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
  readonly finish?: string;
}
