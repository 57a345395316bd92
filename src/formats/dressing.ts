import type { FabricColor } from '../color/fabric.js';
import type { DensityAsked } from './density-asked.js';
import type { RoleSaid } from './stop-roles.js';

/**
 * The dressing: the saved record of a whole piece of work, and what the main job takes. Command-line options build one,
 * a `.dressing.json` file holds one. Lengths in mm, angles in degrees.
 */
export const DRESSING_VERSION = 1;
/** No cloth that can be embroidered draws in by more than this on each side of a narrow satin, mm. */
export const MOST_PULL = 0.6;

export interface Dressing {
  /** the place of the schema, for editors */
  readonly $schema?: string;
  readonly format: 'seamwright-dressing';
  readonly version: number;
  readonly block: BlockSource;
  /** manner of ending where a seam butts into another; a treatment may have its own */
  readonly ends: Manner;
  /** what the outline is for: trimmed in the hoop, joined into other work, or free */
  readonly outline: 'trim' | 'join' | 'free';
  /** clear cloth between bands at a junction, mm, measured to needle points */
  readonly gap: number;
  readonly treatments: readonly Treatment[];
  readonly ornaments?: readonly PlacedOrnament[];
  /** where nothing is sewn by the dressing: a monogram, a photo, a charm */
  readonly keepClear?: readonly KeepClear[];
  /** what is sewn before all else when a finished block is hooped */
  readonly hooping?: Hooping;
  /** fabrics of patches, where they are not what the drawing says */
  readonly fabrics?: readonly PatchFabric[];
  readonly threads: readonly ThreadChoice[];
  readonly hoop: { readonly width: number; readonly height: number } | null;
  /** what minutes are reckoned by, where it is not as is common */
  readonly machine?: Machine;
  /** stitch files: the stop after which the new stops go in; null is after the last of block.stops */
  readonly after: number | null;
  /** what gets a color stop of its own: each row (usual), each thread, or all together one */
  readonly stopPer?: 'row' | 'thread' | 'all';
  /** how much wider satin is sewn to either side than it is to be, mm: thread draws the cloth together; 0 when not given */
  readonly pull?: number;
  /** from where on density is told, where it is not as is usual on firm cloth */
  readonly density?: DensityAsked;
  /** for everything seeded */
  readonly seed: number;
  /** from 0, even, to 1, as uneven as a practiced hand; 0 when not given */
  readonly byHand?: number;
  /** seams that stay bare when the block is mixed again */
  readonly bare?: readonly SeamReference[];
  /** seams as their treatments name them, in the order in which the maker wants these sewn */
  readonly order?: readonly (number | 'outline')[];
  /** folder of the library that its stitches are looked up in; relative ones are relative to the dressing file */
  readonly library?: string;
}

/** The fabric of one patch: its colors, and how busy they are. */
export interface PatchFabric {
  readonly patch: PatchReference;
  /** at least one; shares in any measure */
  readonly colors: readonly FabricColor[];
  /** from 0, plain, to 1; 0 when not given */
  readonly busyness?: number;
  /** name of the picture that the colors were taken from */
  readonly picture?: string;
}

/** How a fabric remembers its patch: by number, and by a place well inside, so that it survives a redrawn block. */
export interface PatchReference {
  readonly id: number;
  readonly at: readonly [number, number] | null;
}

/** A free-standing figure in a patch or on a junction. */
export interface PlacedOrnament extends Weighted {
  readonly ornament: string;
  /** where its middle lies; this or `patch` */
  readonly at?: readonly [number, number];
  /** the patch in whose largest clear circle it stands, made smaller where it must: its number, or a place in it */
  readonly patch?: number | { readonly at: readonly [number, number] };
  /** degrees counterclockwise as seen; 0 stands upright; 'fit' lies along the patch */
  readonly turn?: number | 'fit';
  readonly parameters: Readonly<Record<string, number>>;
  readonly thread: number;
  readonly moreThreads?: readonly number[];
  /** stays when the rest of the block is mixed again */
  readonly pinned?: boolean;
}

/** A part of the cloth that stays clear: one of polygon, circle and stops says where it lies. */
export interface KeepClear {
  readonly name: string;
  readonly polygon?: readonly (readonly [number, number])[];
  readonly circle?: { readonly at: readonly [number, number]; readonly radius: number };
  /** stitch files: color stops, from 1, whose stitching is to stay as it lies */
  readonly stops?: readonly number[];
}

export interface BlockSource {
  /** path of the drawing or stitch file, as given; relative ones are relative to the dressing file */
  readonly file: string;
  /** the text of the drawing itself: `file` then is only the name it had */
  readonly svg?: string;
  /** of the file's bytes when the dressing was saved: "sha256:" and 64 hexadecimal digits */
  readonly digest?: string;
  /** stitch files: the color stops that are the seams, from 1 */
  readonly stops: readonly number[] | null;
  readonly snap: number;
  /** who runs through a junction, by the maker's word: at the junction nearest to `at`, seam runs through */
  readonly through: readonly SeamAt[];
  /** seams that are one line where they meet, and seams that end where they would run on */
  readonly join?: readonly SeamsAt[];
  readonly split?: readonly SeamAt[];
  /** made larger or smaller by this factor, or as large as the hoop takes; stitches keep their size */
  readonly scale?: number | 'hoop';
  /** turned by so many degrees counterclockwise as seen */
  readonly turn?: number;
  /**
   * stitch files: the text of a drawing whose lines are the seams, in the place of the lines that `stops` sew and in their
   * frame; the file's stops stay as they are
   */
  readonly traced?: string;
  /** stitch files: color stops that are not sewn */
  readonly leaveOut?: readonly number[];
  /** stitch files: what color stops are for, where the maker knows better than what is seen in them */
  readonly roles?: readonly RoleSaid[];
}

/** The maker's word at the junction nearest to `at`; seams have the numbers that the block gives them by itself. */
export interface SeamAt {
  readonly at: readonly [number, number];
  readonly seam: number;
}

export interface SeamsAt {
  readonly at: readonly [number, number];
  readonly seams: readonly [number, number];
}

/** Ways of ending where a seam butts into another. */
export const MANNERS = ['tuck', 'bevel', 'short'] as const;
export type Manner = (typeof MANNERS)[number];

/** How a treatment ends: alike at both ends, or its start and its end, in its seam's direction; null is as the block. */
export type Ends = Manner | null | readonly [start: Manner | null, end: Manner | null];

/** Ways in which a row passes a sharp corner of its line. */
export const CORNER_MANNERS = ['turn', 'round', 'break'] as const;
export type CornerManner = (typeof CORNER_MANNERS)[number];

/** How a treatment remembers its seam: by number, and by middle and ends, so that it survives a redrawn block. */
export interface SeamReference {
  readonly id: number | 'outline';
  readonly middle: readonly [number, number] | null;
  readonly ends: readonly [readonly [number, number], readonly [number, number]] | null;
}

/** What one seam gets. */
export interface Treatment extends Work {
  readonly seam: SeamReference;
  readonly ends: Ends;
  /** how its rows pass sharp corners, where they do not as their stitches do by themselves */
  readonly corner?: CornerManner;
  /** to which hand one-sided stitches stand; null: the later-sewn, upper patch */
  readonly side: 'left' | 'right' | null;
  /** direction of growth against the seam's own */
  readonly reverse: boolean;
  /** stays when the rest of the block is mixed again */
  readonly pinned?: boolean;
}

/** Rows, the accents that sit on them, what is laid beneath and what they are stitched on: the part of a treatment that any seam can get. */
export interface Work {
  /** at least one; the others keep in step with the first */
  readonly rows: readonly Row[];
  readonly accents?: readonly Accent[];
  readonly laid?: Laid | null;
  /** what is drawn along the seam and stitched on instead of the seam itself */
  readonly guide?: Guide | null;
}

/** Stops that help to hoop a finished block, see hoopingStops. */
export interface Hooping {
  /** the outline on the stabilizer, to lay the block on */
  readonly outline?: boolean;
  /** a box of long stitches so far outside the block, mm */
  readonly basting?: number;
  /** places that show whether the block lies right */
  readonly align?: readonly (readonly [number, number])[];
  /** these get crosses of long stitches instead of a single hole */
  readonly crosses?: boolean;
}

/** The machine that a dressing is sewn on; what is not said is as is common, see COMMON_PACE. */
export interface Machine {
  /** how many threads it holds and changes by itself; 1 halts for each */
  readonly needles?: number;
  readonly stitchesPerMinute?: number;
  /** with threads of No. 12 and heavier, and metallic ones */
  readonly heavyStitchesPerMinute?: number;
  readonly trimSeconds?: number;
  /** for the maker to thread another */
  readonly changeMinutes?: number;
}

/** Waves along the seam; of two interlaced lines every second row takes the other. */
export interface Guide {
  readonly shape: 'wave' | 'scallop' | 'points' | 'interlace';
  /** from the lowest to the highest point, mm */
  readonly height: number;
  /** of one wave along the seam, mm */
  readonly length: number;
}

/** A guide line is at most this share of its length high: no thread could follow a steeper one. */
export const STEEPEST_GUIDE = 0.5;

/** Threads that a hand uses, from the finest to the heaviest. */
export const HAND_THREADS = ['one-strand', 'two-strands', 'pearl-8', 'pearl-5'] as const;
export type HandThread = (typeof HAND_THREADS)[number];

/** How heavy visible legs are: one of the two is said. */
export interface Weighted {
  /** passes of thread on each leg */
  readonly passes?: number;
  /** as heavy as this thread of a hand, in as many passes as that takes in the thread in use */
  readonly heavy?: HandThread;
}

export interface Row extends Weighted {
  readonly stitch: string;
  /** parameter values by name; `repeat` and `width` among them; missing ones take the stitch's default */
  readonly parameters: Readonly<Record<string, number>>;
  /** index into threads */
  readonly thread: number;
  /** indices into threads for the stitch's second thread and further ones; those not named take the first */
  readonly moreThreads?: readonly number[];
  /** distance of the row's line from the seam, mm, positive to the left */
  readonly offset: number;
  /** stands to the other hand than the treatment: back to back with a first row */
  readonly flip?: boolean;
  /** repeats for each repeat of the first row, which sets the step: 1, 2 or 0.5 */
  readonly times?: number;
  /** moved along by this share of its repeat, 0 up to 1 */
  readonly step?: number;
}

/** Figures on the seats of a row. */
export interface Accent extends Weighted {
  /** index into rows */
  readonly row: number;
  /** name of the seat */
  readonly seat: string;
  /** an ornament, or what is put on by hand afterwards and is marked, not sewn */
  readonly ornament: string | null;
  readonly byHand?: string | null;
  readonly parameters: Readonly<Record<string, number>>;
  /** parameters that change from seat to seat, in turn: one, three, five, three petals */
  readonly graded?: readonly Readonly<Record<string, number>>[];
  readonly thread: number;
  readonly moreThreads?: readonly number[];
  /** on every seat, every second, ... */
  readonly every?: number;
  /** the first seat that gets one, counted from 0 */
  readonly from?: number;
  /** turned from straight up, away from the line, degrees counterclockwise on its left hand, clockwise on its right */
  readonly turn?: number;
  /** moved away from the seat, straight up, mm */
  readonly away?: number;
}

/** Ribbon, braid or lace laid by hand along a sewn placement line, and held by the rows that cross it. */
export interface Laid {
  readonly name: string;
  readonly width: number;
  readonly hex: string;
  /** index into threads, of the placement line */
  readonly thread: number;
}

export interface ThreadChoice {
  readonly name: string;
  readonly hex: string;
  readonly weight: string;
  /** further colors of a variegated thread, '#rrggbb' */
  readonly moreHex?: readonly string[];
  /** what the maker's own list calls it, and whether it shines */
  readonly code?: string;
  readonly finish?: string;
}

/** All colors of a thread, '#rrggbb'. */
export const threadColors = ({
  hex,
  moreHex = [],
}: Pick<ThreadChoice, 'hex' | 'moreHex'>): readonly string[] => [hex, ...moreHex];
