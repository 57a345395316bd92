import type { LegKind } from '../../src/stitches/stitch.js';
import type { StitchRecord } from '../../src/stitches/stitch-record.js';
import type { Complaint, DrawnBlock, DrawnThread } from './messages.js';

/** A place of the unit in its own frame, mm: u along, v across and positive to the left hand. */
export interface UnitSpot {
  readonly name: string;
  readonly u: number;
  readonly v: number;
}

/** One unit of a stitch at its usual sizes. */
export interface BenchUnit {
  readonly length: number;
  /** every point, copies written out: `tip[0]` */
  readonly spots: readonly UnitSpot[];
  readonly seats: readonly UnitSpot[];
  readonly legs: readonly {
    readonly name: string;
    readonly kind: LegKind;
    /** u0 v0 u1 v1 ... */
    readonly path: Float64Array;
    /** diameter of a knot, width of satin, else 0 */
    readonly size: number;
    /** which of the stitch's threads, from 0 */
    readonly thread: number;
    /** worked only where a row ends */
    readonly isEnding: boolean;
  }[];
  /** how far it reaches to both hands, mm */
  readonly left: number;
  readonly right: number;
}

/** A stitch on the bench; unit and samples are null where it cannot be built, and `wrong` says why. */
export interface Benched {
  readonly unit: BenchUnit | null;
  readonly samples: { readonly block: DrawnBlock; readonly threads: readonly DrawnThread[] } | null;
  readonly wrong: readonly Complaint[];
}

export interface BenchFinding extends Complaint {
  readonly level: 'wrong' | 'note';
  /** sizes at which it is so, null at the usual ones */
  readonly at: string | null;
}

/** A stitch of the maker's own, as its file. */
export interface OwnStitch {
  /** the file's name without its ending */
  readonly name: string;
  readonly text: string;
}

/** What the bench asks of the core. */
export interface BenchAsks {
  /** the file of a stitch in the dictionary */
  stitchFile: { ask: { name: string }; answer: string };
  /** these stand before the built-in stitches from now on; what cannot be read among them is told */
  own: { ask: { stitches: readonly OwnStitch[] }; answer: readonly Complaint[] };
  /** what is wrong with files of stitches, each by itself */
  readOwn: {
    ask: { stitches: readonly OwnStitch[] };
    answer: readonly { readonly stitch: OwnStitch; readonly wrong: readonly Complaint[] }[];
  };
  bench: { ask: { name: string; record: StitchRecord }; answer: Benched };
  benchFindings: { ask: { name: string; record: StitchRecord }; answer: readonly BenchFinding[] };
}
