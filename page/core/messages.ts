import type { Role, StopRole } from '../../src/block/roles/role.js';
import type { ToldApart } from '../../src/draw/overlays/overlay-picture.js';
import type { Shown } from '../../src/draw/overlays/show.js';
import type { Finding } from '../../src/finding.js';
import type { Mark } from '../../src/fit/fit.js';
import type { CornerManner, Dressing, SeamReference, Work } from '../../src/formats/dressing.js';
import type { SeamDrawing } from '../../src/formats/seam-drawing.js';
import type { Placement } from '../../src/geometry/placement.js';
import type { LengthUnit } from '../../src/geometry/units.js';
import type { DressReport } from '../../src/report/dress-report.js';
import type { Parameter } from '../../src/stitches/stitch.js';
import type { BenchAsks } from './bench-messages.js';
import type { DrawAsks } from './drawing-messages.js';
import type { LineAsks } from './line-messages.js';
import type { PictureNews } from './news.js';

export type { MeetingPlace } from './line-messages.js';

/** A line of the block, as treatments name it. */
export type Line = number | 'outline';

/** A file as the maker gave it. */
export interface GivenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Thread ready to be drawn: points in mm, to whole micrometers, and the pieces of every run; a run ends with -1. */
export interface DrawnThread {
  /** the same for thread that looks the same, and for no other */
  readonly key: string;
  readonly xy: Float64Array;
  readonly cuts: Int32Array;
  readonly hex: string;
  readonly width: number;
}

export interface DrawnStop extends DrawnThread {
  readonly title: string;
  readonly kind: string;
  readonly seams: readonly Line[];
}

/** The block as it lies, before any thread of ours; mm, to whole micrometers. */
export interface DrawnBlock {
  /** the same for a block that looks the same, and for no other */
  readonly key: string;
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly patches: readonly {
    readonly id: number;
    readonly fill: string;
    readonly rings: readonly Float64Array[];
  }[];
  readonly seams: readonly { readonly id: number; readonly points: Float64Array }[];
  readonly outline: Float64Array | null;
  /** what the block's own file sews, stop by stop */
  readonly existing: readonly { readonly stop: number; readonly runs: readonly Float64Array[] }[];
}

/** Ribbon, braid or lace that is laid by hand once its placement line is sewn: its middle, mm, to whole micrometers. */
export interface DrawnRibbon {
  /** of the thread of its placement line */
  readonly on: string;
  readonly lines: readonly Float64Array[];
  readonly width: number;
  readonly hex: string;
}

/** A dressed block, all that the page shows of it. */
export interface Picture {
  readonly block: DrawnBlock;
  readonly stops: readonly DrawnStop[];
  readonly marks: readonly Mark[];
  readonly laid: readonly DrawnRibbon[];
  readonly report: DressReport;
  /** where the middle of each of the dressing's ornaments lies; null for one that found no room */
  readonly ornaments: readonly (readonly [number, number] | null)[];
  readonly keptClear: readonly { readonly name: string; readonly rings: readonly Float64Array[] }[];
  /** how the block as drawn, on which a dressing tells its places, lies here */
  readonly placement: Placement;
  /** of each accent, counted from 0 on its line, the figure nearest to the line's middle: its own middle, mm */
  readonly accents: readonly {
    readonly line: Line;
    readonly nth: number;
    readonly at: readonly [number, number];
  }[];
  /** lines that stand to their right hand without being told to: what is said of their left lies right */
  readonly turnedOver: readonly Line[];
  /** how treatments remember the seams of the block as drawn */
  readonly references: readonly SeamReference[];
}

/** A free-standing figure of the library. */
export interface Figure {
  readonly name: string;
  readonly title: string;
  readonly threads: number;
  readonly size: Parameter;
}

/** The block as drawn, without thread, and its lines as they can be changed. */
export interface Bare {
  readonly block: DrawnBlock;
  readonly drawing: SeamDrawing;
  /** a place well inside each patch, by its number; mm to hundredths, as fabrics remember their patch */
  readonly insides: readonly (readonly [number, readonly [number, number]])[];
  /** treatments whose line is not where they were made for */
  readonly missing: readonly Missing[];
}

/** A treatment that would miss its seam. */
export interface Missing {
  /** counted from 0 */
  readonly treatment: number;
  readonly seam: Line;
  readonly stitches: readonly string[];
  readonly at: readonly [number, number] | null;
  /** the seam that comes nearest to its middle, how near, mm, and whether nothing is worked on it */
  readonly nearest: { readonly seam: SeamReference; readonly off: number; readonly isBare: boolean } | null;
}

/** What was made of a file. */
export interface Opened {
  readonly dressing: Dressing;
  /** of a stitch file: what each color stop was taken for */
  readonly roles: readonly StopRole[] | null;
  /** why each line got what it got, where the block was mixed */
  readonly why: readonly (readonly [Line, string])[];
  readonly findings: readonly Finding[];
}

/** Something that a line can get, as it stands on the shelf. */
export interface Offered {
  readonly name: string;
  readonly title: string;
  readonly otherNames: readonly string[];
  readonly use: string;
  readonly family: string;
  readonly shelf: 'stitch' | 'treatment';
  readonly isOwn: boolean;
  /** of a stitch: what can be told of it, what its threads do, and where accents can sit */
  readonly parameters: readonly Parameter[];
  readonly threads: readonly string[];
  readonly seats: readonly string[];
  /** of a stitch: what it does at a sharp corner by itself */
  readonly corner: CornerManner | null;
  /** threads count from 0 */
  readonly work: Work;
}

/** How an offer looks on a line: null where it does not fit. */
export interface Tried {
  readonly name: string;
  readonly threads: readonly DrawnThread[];
}

export type OutputKind =
  | 'dst'
  | 'sheet'
  | 'pattern'
  | 'alone'
  | 'dressing'
  | 'svg'
  | 'sampler'
  | 'csv'
  | 'points';

/** What of the work is looked at instead of the thread as it lies. */
export type Looked = Exclude<Shown, 'thread'>;

/** A picture of the cloth, where its corner lies on the block, mm, and what is told beside it. */
export interface Look extends ToldApart {
  readonly left: number;
  readonly top: number;
}

/** What the page can ask of the core, and what it gets. */
export interface Asks extends BenchAsks, DrawAsks, LineAsks {
  open: {
    ask: { file: GivenFile; beside?: GivenFile; roles?: readonly (readonly [number, Role])[]; seed: number };
    answer: Opened;
  };
  /** the file that a dressing is of */
  hold: { ask: { file: GivenFile }; answer: null };
  dress: { ask: { dressing: Dressing }; answer: Picture };
  /** the same without what the page has, by keys */
  redress: { ask: { dressing: Dressing; has: readonly string[] }; answer: PictureNews };
  mix: { ask: { dressing: Dressing; seed: number; lines?: readonly number[] }; answer: Opened };
  offers: { ask: null; answer: readonly Offered[] };
  figures: { ask: null; answer: readonly Figure[] };
  try: { ask: { dressing: Dressing; line: Line; offer: Offered }; answer: Tried };
  /** least: numbers are not smaller, mm */
  look: { ask: { dressing: Dressing; shown: Looked; unit: LengthUnit; least: number }; answer: Look };
  /** all findings, density and contrast among them, worst first */
  examine: { ask: { dressing: Dressing }; answer: readonly Finding[] };
  /** the block to draw on */
  bare: { ask: { dressing: Dressing }; answer: Bare };
  /** a block of so many mm, with nothing on it */
  empty: { ask: { width: number; height: number }; answer: Dressing };
  /** the dressing once the lines of its block are drawn anew */
  redraw: { ask: { dressing: Dressing; drawing: SeamDrawing }; answer: Dressing };
  output: { ask: { dressing: Dressing; kind: OutputKind }; answer: Uint8Array };
}

export type What = keyof Asks;

export interface Question {
  readonly id: number;
  readonly what: What;
  readonly ask: unknown;
}

/** What could not be used, in the parts that a screen shows. */
export interface Complaint {
  readonly where: string;
  readonly wrong: string;
  readonly right: string;
}

export type Answer =
  | { readonly id: number; readonly answer: unknown }
  | { readonly id: number; readonly complaint: Complaint };
