import type { Ornament, Parameter, Stitch } from './stitch.js';

/**
 * What files of stitches and of ornaments have in common: JSON that a maker can edit. Lengths are mm in the unit's own
 * frame (u along the line, v across, positive to the left hand); angles in degrees.
 */
export interface FigureRecord {
  readonly format: 1;
  readonly title: string;
  readonly otherNames: readonly string[];
  readonly family: string;
  readonly for: string;
  /** where its shape was learned: author, title, year, figure */
  readonly sources: readonly string[];
  readonly parameters: Readonly<Record<string, Omit<Parameter, 'name'>>>;
  /** quantities worked out once and used by name further down; each may use those before it */
  readonly measures?: Readonly<Record<string, Arithmetic>>;
  /** names of its threads, when there are several; legs go to the first unless they say another */
  readonly threads?: readonly string[];
  readonly points: Readonly<Record<string, PlaceRecord | CopiedPlaceRecord>>;
  /** in the order a hand works them */
  readonly legs: readonly (LegRecord | CopiedLegsRecord)[];
  /** where an accent can sit: a point, or a place of its own */
  readonly seats?: Readonly<Record<string, string | PlaceRecord>>;
}

/** A stitch file: one unit that is worked again and again along a line. */
export interface StitchRecord extends FigureRecord {
  readonly symmetry: Stitch['symmetry'];
  readonly halves: boolean;
  readonly corner: Stitch['corner'];
  readonly growth: Stitch['growth'];
  readonly smallest: Stitch['smallest'];
  /** units stand apart: the needle jumps from one to the next */
  readonly detached?: boolean;
  /** point of this unit: the point of the next unit that is the same hole */
  readonly joins: Readonly<Record<string, string>>;
  /** names of legs drawn once more where a row ends */
  readonly closing?: readonly string[];
}

/** An ornament file: one free-standing figure about (0, 0); v points up, away from what it sits on. */
export interface OrnamentRecord extends FigureRecord {
  readonly smallest: Ornament['smallest'];
}

/**
 * A number, or arithmetic on the parameters, the measures before it, `length` (a unit's own length: the repeat, half of
 * it in a glide; an ornament's size) and `pi`; among copies also `i`, which counts them from 0.
 */
export type Arithmetic = number | string;
/** [u, v] */
export type PlaceRecord = readonly [Arithmetic, Arithmetic];
/** Places `name[0]`, `name[1]`, ...; how many can depend on parameters whose unit is `count`, and on nothing else. */
export interface CopiedPlaceRecord {
  readonly count: Arithmetic;
  readonly at: PlaceRecord;
}
/** Legs worked `count` times over; their points may be named with `i`: `tip[i]`, `tip[i + 1]`. */
export interface CopiedLegsRecord {
  readonly count: Arithmetic;
  readonly legs: readonly LegRecord[];
}

interface Common {
  readonly name: string;
  /** share of the row's weight in thread; 1 when not given, 0 on an under-leg */
  readonly share?: number;
  /** the point in whose frame the leg is laid stiffly, as a flower is; without it the leg bends with the line */
  readonly keepsShapeAt?: string;
  /** worked only where a row ends, as if another unit began there, after the closing legs */
  readonly onlyAtEnd?: boolean;
  /** one of the file's `threads` */
  readonly thread?: string;
}
interface FromTo extends Common {
  readonly from: string;
  readonly to: string;
}
export interface StraightRecord extends FromTo {
  readonly kind: 'straight';
}
/** How a leg bends: pulled by control points (one makes a quadratic curve, two a cubic one), or led through points. */
interface Bent extends FromTo {
  readonly via?: readonly string[];
  readonly through?: readonly string[];
}
export interface CurveRecord extends Bent {
  readonly kind: 'curve';
}
/** Thread out at the base, round by the tip, and back. `width` is across its belly. */
export interface LoopRecord extends Common {
  readonly kind: 'loop';
  readonly base: string;
  readonly tip: string;
  readonly width: Arithmetic;
}
export interface KnotRecord extends Common {
  readonly kind: 'knot';
  readonly at: string;
  /** diameter */
  readonly size: Arithmetic;
}
export interface PetalRecord extends Common {
  readonly kind: 'petal';
  readonly base: string;
  readonly tip: string;
  readonly width: Arithmetic;
}
export interface CordRecord extends Bent {
  readonly kind: 'cord';
  readonly width: Arithmetic;
}
/**
 * What the hand does behind the cloth. So that it hides under visible thread when a machine sews it, it is led through
 * the points `via`, or lies all the way `beneath` the named leg, which has the same two ends.
 */
export interface UnderRecord extends FromTo {
  readonly kind: 'under';
  readonly via?: readonly string[];
  readonly beneath?: string;
}
export type LegRecord =
  | StraightRecord
  | CurveRecord
  | LoopRecord
  | KnotRecord
  | PetalRecord
  | CordRecord
  | UnderRecord;
