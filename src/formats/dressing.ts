/**
 * The dressing: the saved record of a whole piece of work, and what the main job takes. Command-line options build one,
 * a `.dressing.json` file holds one. Lengths in mm, angles in degrees.
 */
export const DRESSING_VERSION = 1;

export interface Dressing {
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
  readonly threads: readonly ThreadChoice[];
  readonly hoop: { readonly width: number; readonly height: number } | null;
  /** stitch files: the stop after which the new stops go in; null is after the last of block.stops */
  readonly after: number | null;
  /** for everything seeded */
  readonly seed: number;
}

export interface BlockSource {
  /** path of the drawing or stitch file, as given; relative ones are relative to the dressing file */
  readonly file: string;
  /** stitch files: the color stops that are the seams, from 1 */
  readonly stops: readonly number[] | null;
  readonly snap: number;
  /** who runs through a junction, by the maker's word: at the junction nearest to `at`, seam runs through */
  readonly through: readonly { readonly at: readonly [number, number]; readonly seam: number }[];
}

export type Manner = 'tuck' | 'bevel' | 'short';

/** How a treatment remembers its seam: by number, and by middle and ends, so that it survives a redrawn block. */
export interface SeamReference {
  readonly id: number | 'outline';
  readonly middle: readonly [number, number] | null;
  readonly ends: readonly [readonly [number, number], readonly [number, number]] | null;
}

export interface Treatment {
  readonly seam: SeamReference;
  readonly rows: readonly Row[];
  readonly ends: Manner | null;
  /** to which hand one-sided stitches stand; null: the later-sewn, upper patch */
  readonly side: 'left' | 'right' | null;
  /** direction of growth against the seam's own */
  readonly reverse: boolean;
}

export interface Row {
  readonly stitch: string;
  /** parameter values by name; `repeat` and `width` among them; missing ones take the stitch's default */
  readonly parameters: Readonly<Record<string, number>>;
  /** index into threads */
  readonly thread: number;
  /** visible passes of thread on each leg */
  readonly passes: number;
  /** distance of the row's line from the seam, mm, positive to the left */
  readonly offset: number;
}

export interface ThreadChoice {
  readonly name: string;
  readonly hex: string;
  readonly weight: string;
}
