/** What stitches and ornaments have in common: declared parameters, and one function that builds from their values. */
export interface Figure {
  /** its file's name without the ending */
  readonly name: string;
  readonly title: string;
  readonly otherNames: readonly string[];
  readonly family: string;
  /** what it is for, a sentence */
  readonly use: string;
  readonly parameters: readonly Parameter[];
  /** what each of its threads does, at least one; every thread is a color stop of its own */
  readonly threads: readonly string[];
  build(values: Values): Unit;
}

/**
 * A free-standing figure: an accent on the seats of a stitch, or alone in a patch. Its one unit lies about (0, 0), u to
 * the right, v up, away from what it sits on; its length is 0. It declares at least `size` (greatest extent, mm).
 */
export interface Ornament extends Figure {
  /** smallest good size in mm for thread of No. 40 */
  readonly smallest: { readonly size: number };
}

/**
 * A stitch as the rest of the program knows it. Its *unit* is one repeat, or half a repeat where the stitch is a glide: there the second half is the first one
 * with left and right exchanged, so units alternate hands.
 *
 * A unit's own frame: u along the guide line from 0 to its length, v across, positive to the left hand of someone
 * walking along; millimeters.
 */
export interface Stitch extends Figure {
  readonly symmetry: 'none' | 'mirror' | 'glide';
  /** whether a line of it may end after half a repeat */
  readonly halves: boolean;
  /** what it does at a sharp corner of the line, by default */
  readonly corner: 'turn' | 'round' | 'break';
  /** whether its direction of growth goes on round a corner or is mirrored there */
  readonly growth: 'on' | 'mirror';
  /** smallest good size: repeat and width in mm for thread of No. 40 */
  readonly smallest: { readonly repeat: number; readonly width: number };
  /** its units stand apart, and the needle jumps between them */
  readonly detached: boolean;
}

/** Every stitch declares at least `repeat` (length of one repeat, mm) and `width` (whole width across, mm). */
export interface Parameter {
  readonly name: string;
  readonly title: string;
  readonly unit: 'mm' | 'degree' | 'count' | 'share';
  readonly default: number;
  readonly min: number;
  readonly max: number;
}

/** Parameter values by name; a missing one takes its default. */
export type Values = Readonly<Record<string, number>>;

export interface Unit {
  /** advance along the guide line, mm */
  readonly length: number;
  /** needle points that legs share: u0 v0 u1 v1 ... */
  readonly nodes: Float64Array;
  /** [a, b]: node a of this unit is node b of the next one (in the next one's own frame and hand) */
  readonly joins: readonly (readonly [number, number])[];
  /** in the order a hand works them */
  readonly legs: readonly UnitLeg[];
  /** indices of legs that are drawn once more at the end of a row, as if another unit began there */
  readonly closing: readonly number[];
  /** legs laid after those, in the same place, and nowhere else: the stitch that holds the last loop */
  readonly ending: readonly UnitLeg[];
  readonly seats: readonly { readonly name: string; readonly u: number; readonly v: number }[];
  /** how far needle points reach to the left and right hand, mm */
  readonly reach: { readonly left: number; readonly right: number };
  /** how far legs reach before u = 0 of the first unit and past the end of the last (closing legs included), mm */
  readonly overhang: { readonly start: number; readonly end: number };
}

export type LegKind = 'straight' | 'curve' | 'loop' | 'knot' | 'petal' | 'cord' | 'under';

export interface UnitLeg {
  /** unique in the file; both halves of a loop carry the loop's name */
  readonly name: string;
  readonly kind: LegKind;
  /** node indices; equal for a knot */
  readonly from: number;
  readonly to: number;
  /** u0 v0 ... from node to node, both included, dense enough to be seen as a curve (turn under 15 degrees a chord) */
  readonly path: Float64Array;
  /** visible thread it asks for: passes = round(weight * share), at least 1; 0 on under-legs that may be left out */
  readonly share: number;
  /** true: bends with the guide line. false: keeps its shape about `anchor` */
  readonly bends: boolean;
  /** node whose frame a rigid leg (bends = false) is laid in */
  readonly anchor: number;
  /** legs of one class get equal passes in every repeat: the leg's index in the file, copies counted, loop halves alike */
  readonly class: number;
  /** index into the stitch's threads */
  readonly thread: number;
  /** knot: diameter; petal and cord: width of the satin; else 0; mm */
  readonly size: number;
}
